/**
 * The demo collection: three invented seasons of night-blooming climbing cacti in one invented garden.
 *
 *   node scripts/demo-data.mjs           writes data-demo/{crosses,vials,flowers}.csv
 *   node scripts/demo-data.mjs --check   exits 1 where the committed files differ from what the seed gives
 *
 * How the flowers were made (the truth that an analysis should find again). A flower sets fruit with probability
 *
 *   logit p = 0.45 + seedParent + pollenParent + pair + storage + slope · ln(1 + ageDays) + vial + morning
 *
 * - seedParent, pollenParent and pair are the constants of PLANTS and PAIRS below; vial ~ N(0, 0.25²) and
 *   morning ~ N(0, 0.25²) are drawn once each.
 * - storage: frozen −0.15, refrigerated −0.05, room −0.30; slope: frozen −0.09, refrigerated −0.25, room −0.60.
 *   Fresh pollen has age 0. Averaged over the frozen crosses, freezing costs 10 to 15 points of fruit set.
 * - Pairs that bloom apart are the hard ones (pair effect about −1), and since they bloom apart they are mostly
 *   made with frozen pollen: the raw gap between fresh and frozen is about twice the true loss.
 * - 'Nightjar 3' and 'Nightjar 7' are sister seedlings and incompatible both ways: p = 0 whatever the pollen.
 * - 'Hollow Bell' gives no good pollen: p = 0 for every cross it fathers. A plant's own pollen never takes.
 * - Afterwards: 4 % of the tags are lost, whatever happened; one set fruit in nine drops before harvest;
 *   flowers of the last mornings are pending, since nobody could look yet on 2025-09-24.
 *
 * The seed was chosen among some so that the drawn season lies near its own truth.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const SEED = 243;
const AS_OF = '2025-09-24';
const GROWER = 'Maren Ostrik';
const LOST = 0.04;
const DROPPED = 1 / 9;
const BASE = 0.45;
const MORNING_SD = 0.25;
const VIAL_SD = 0.25;
const STORAGE = {
  fresh: { effect: 0, slope: 0 },
  room: { effect: -0.3, slope: -0.6 },
  refrigerated: { effect: -0.05, slope: -0.25 },
  frozen: { effect: -0.15, slope: -0.09 },
};

/** name, when it blooms, effect as seed parent, effect as pollen parent */
const PLANTS = [
  ['Candle Weir', 'early', 0.6, 0.2],
  ['Copper Tide', 'early', 0.1, 0.5],
  ['Grey Sunday', 'late', -0.4, -0.2],
  ['Hollow Bell', 'early', 0.2, 0],
  ['Lantern Creek', 'both', 0.5, 0.4],
  ['Moth Ledger', 'late', 0, 0.3],
  ['Nightjar 3', 'both', 0.3, 0.1],
  ['Nightjar 7', 'both', -0.1, 0.2],
  ['Old Ferry', 'late', -0.6, 0],
  ['Pale Otter', 'early', 0.2, -0.3],
  ['Quiet Harbour', 'both', 0.4, 0.1],
  ['Salt Moon', 'late', 0.3, 0.6],
  ['Tinder Vale', 'early', -0.3, 0.2],
  ['Velvet Anchor', 'late', 0.1, -0.5],
];

/** seed parent, pollen parent, effect of the pair, how much it is wanted */
const PAIRS = [
  ['Candle Weir', 'Copper Tide', 0.7, 6],
  ['Copper Tide', 'Candle Weir', 0.6, 5],
  ['Candle Weir', 'Lantern Creek', 0.5, 4],
  ['Lantern Creek', 'Candle Weir', 0.4, 4],
  ['Lantern Creek', 'Quiet Harbour', 0.7, 6],
  ['Quiet Harbour', 'Lantern Creek', 0.6, 5],
  ['Moth Ledger', 'Salt Moon', 0.6, 5],
  ['Salt Moon', 'Moth Ledger', 0.5, 4],
  ['Nightjar 3', 'Quiet Harbour', 0.4, 4],
  ['Quiet Harbour', 'Nightjar 7', 0.1, 3],
  ['Nightjar 7', 'Lantern Creek', 0.1, 4],
  ['Salt Moon', 'Velvet Anchor', 0, 2],
  ['Pale Otter', 'Copper Tide', 0.2, 3],
  ['Candle Weir', 'Salt Moon', -0.9, 7],
  ['Salt Moon', 'Candle Weir', -1, 5],
  ['Copper Tide', 'Salt Moon', -0.8, 6],
  ['Tinder Vale', 'Moth Ledger', -1.1, 6],
  ['Old Ferry', 'Copper Tide', -1, 6],
  ['Grey Sunday', 'Tinder Vale', -1, 5],
  ['Grey Sunday', 'Lantern Creek', -0.9, 5],
  ['Old Ferry', 'Lantern Creek', -0.6, 5],
  ['Moth Ledger', 'Candle Weir', -1.2, 5],
  ['Nightjar 3', 'Salt Moon', -0.8, 6],
  ['Pale Otter', 'Salt Moon', -0.7, 4],
  ['Velvet Anchor', 'Copper Tide', -1.1, 4],
  ['Quiet Harbour', 'Salt Moon', -0.6, 5],
  ['Nightjar 3', 'Nightjar 7', null, 2],
  ['Nightjar 7', 'Nightjar 3', null, 2],
  ['Salt Moon', 'Hollow Bell', null, 3],
  ['Quiet Harbour', 'Hollow Bell', null, 2],
];

/** season, wave, the wave's mornings, flowers pollinated on each */
const WAVES = [
  ['2023', '1', ['2023-06-17', '2023-06-18', '2023-06-21'], 14],
  ['2023', '2', ['2023-07-24', '2023-07-25', '2023-07-28'], 14],
  ['2024', '1', ['2024-06-11', '2024-06-12', '2024-06-14'], 13],
  ['2024', '2', ['2024-07-16', '2024-07-17', '2024-07-20', '2024-07-21'], 13],
  ['2025', '1', ['2025-06-20', '2025-06-21', '2025-06-23'], 13],
  ['2025', '2', ['2025-07-29', '2025-07-30', '2025-08-01'], 13],
  ['2025', '3', ['2025-09-05', '2025-09-06', '2025-09-14'], 8],
];

/** vial, pollen parent, collected, storage, doses left (blank where nobody counted), thaws, note */
const VIALS = [
  ['F-01', 'Salt Moon', '2022-08-02', 'frozen', 3, 4, ''],
  ['F-02', 'Copper Tide', '2022-06-19', 'frozen', 2, 5, ''],
  ['F-03', 'Candle Weir', '2023-06-17', 'frozen', 4, 3, ''],
  ['F-04', 'Copper Tide', '2023-06-18', 'frozen', '', 4, ''],
  ['F-05', 'Lantern Creek', '2023-06-21', 'frozen', 5, 2, ''],
  ['F-06', 'Salt Moon', '2023-07-24', 'frozen', 6, 3, ''],
  ['F-07', 'Moth Ledger', '2023-07-25', 'frozen', 2, 3, ''],
  ['F-08', 'Tinder Vale', '2023-06-21', 'frozen', 3, 3, ''],
  ['F-09', 'Hollow Bell', '2023-06-18', 'frozen', 4, 1, ''],
  ['F-10', 'Salt Moon', '2024-07-17', 'frozen', 8, 2, ''],
  ['F-11', 'Candle Weir', '2024-06-12', 'frozen', '', 2, ''],
  ['F-12', 'Copper Tide', '2024-06-14', 'frozen', 5, 1, ''],
  ['F-13', 'Lantern Creek', '2024-07-20', 'frozen', 6, 1, ''],
  ['F-14', 'Velvet Anchor', '2024-07-21', 'frozen', '', 0, 'half a tube'],
  ['F-15', 'Nightjar 7', '2024-07-16', 'frozen', 3, 0, ''],
  ['F-16', 'Quiet Harbour', '2025-06-23', 'frozen', 6, 0, ''],
  ['F-17', 'Tinder Vale', '2025-06-21', 'frozen', 5, 1, ''],
  ['F-18', 'Salt Moon', '2025-09-06', 'frozen', 10, 0, ''],
  ['R-01', 'Quiet Harbour', '2025-09-05', 'refrigerated', 2, '', 'door shelf, silica gel'],
  ['R-02', 'Copper Tide', '2025-07-29', 'refrigerated', '', '', ''],
];
/** Vials that stayed in the freezer. */
const NEVER_USED = new Set(['F-14', 'F-15', 'F-16']);

/** seed parent, flowers, opens from, opens to: what 2026 is expected to offer */
const NEXT_SEASON = [
  ['Candle Weir', 14, '2026-06-10', '2026-07-05'],
  ['Copper Tide', 9, '2026-06-10', '2026-07-05'],
  ['Grey Sunday', 6, '2026-07-15', '2026-08-20'],
  ['Lantern Creek', 12, '2026-06-10', '2026-08-20'],
  ['Moth Ledger', 8, '2026-07-15', '2026-08-20'],
  ['Nightjar 3', 7, '2026-06-15', '2026-08-10'],
  ['Nightjar 7', 5, '2026-06-15', '2026-08-10'],
  ['Old Ferry', 6, '2026-07-20', '2026-09-15'],
  ['Pale Otter', 5, '2026-06-10', '2026-07-05'],
  ['Quiet Harbour', 10, '', ''],
  ['Salt Moon', 8, '2026-07-15', '2026-09-15'],
  ['Tinder Vale', 6, '2026-06-12', '2026-07-01'],
];

const DAY = 86_400_000;
const day = (iso) => Date.parse(`${iso}T00:00:00Z`) / DAY;
const iso = (number) => new Date(number * DAY).toISOString().slice(0, 10);
const logistic = (eta) => 1 / (1 + Math.exp(-eta));

/** Seeded draws: Mulberry32 (Tommy Ettinger 2017), uniform on [0, 1) in steps of 2⁻³². */
function drawer(seed) {
  let state = seed >>> 0;
  const uniform = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  const chance = (p) => uniform() < p;
  const whole = (from, to) => from + Math.floor(uniform() * (to - from + 1));
  const normal = () => Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
  const pick = (list, weight) => {
    let left = uniform() * list.reduce((sum, item) => sum + weight(item), 0);
    for (const item of list) {
      left -= weight(item);
      if (left < 0) return item;
    }
    return list[list.length - 1];
  };
  return { uniform, chance, whole, normal, pick };
}

/** Which plants are open on which morning; a plant whose pollen was put away that day was open. */
function blooming(draw) {
  const share = { early: [0.62, 0.12, 0.05], late: [0.1, 0.62, 0.6], both: [0.5, 0.5, 0.45] };
  const open = new Map();
  for (const [, wave, mornings] of WAVES) {
    for (const morning of mornings) {
      const plants = PLANTS.filter(([, when]) => draw.chance(share[when][Number(wave) - 1]));
      const names = new Set(plants.map(([name]) => name));
      for (const [, parent, collected] of VIALS) if (collected === morning) names.add(parent);
      open.set(morning, names);
    }
  }
  return open;
}

/** The pollen a grower has at hand for a pair this morning, or null. */
function pollenFor(draw, pollenParent, morning, open) {
  const today = day(morning);
  if (open.get(morning).has(pollenParent) && draw.chance(0.93)) {
    return { storage: 'fresh', collected: morning, age: 0, vial: '' };
  }
  const recent = [...open.keys()].filter(
    (m) => day(m) < today && today - day(m) <= 9 && open.get(m).has(pollenParent),
  );
  if (recent.length > 0 && draw.chance(0.4)) {
    const collected = recent[recent.length - 1];
    const age = today - day(collected);
    const storage = age === 1 && draw.chance(0.6) ? 'room' : 'refrigerated';
    const lot = VIALS.find(([, p, c, s]) => s === storage && p === pollenParent && c === collected);
    return { storage, collected, age, vial: lot ? lot[0] : '' };
  }
  const lots = VIALS.filter(([vial, parent, collected, storage]) => {
    const age = today - day(collected);
    return storage === 'frozen' && parent === pollenParent && age > 0 && age <= 800 && !NEVER_USED.has(vial);
  });
  if (lots.length === 0) return null;
  const [vial, , collected] = draw.pick(lots, () => 1);
  return { storage: 'frozen', collected, age: today - day(collected), vial };
}

/** Probability that a cross takes; `as` swaps the pollen for another kind, to measure the true loss. */
function probability(pair, pollen, luck, as = pollen) {
  const [seedParent, pollenParent, effect] = pair;
  if (effect === null || seedParent === pollenParent) return 0;
  const mother = PLANTS.find(([name]) => name === seedParent)[2];
  const father = PLANTS.find(([name]) => name === pollenParent)[3];
  const { effect: kept, slope } = STORAGE[as.storage];
  return logistic(BASE + mother + father + effect + kept + slope * Math.log1p(as.age) + luck);
}

function pollinations(draw) {
  const open = blooming(draw);
  const vialLuck = new Map(VIALS.map(([vial]) => [vial, VIAL_SD * draw.normal()]));
  const crosses = [];
  for (const [season, wave, mornings, flowers] of WAVES) {
    for (const morning of mornings) {
      const morningLuck = MORNING_SD * draw.normal();
      const wanted = PAIRS.filter(([seedParent]) => open.get(morning).has(seedParent));
      for (let made = 0; made < flowers && wanted.length > 0; ) {
        const pair = draw.pick(wanted, ([, , , want]) => want);
        const pollen = pollenFor(draw, pair[1], morning, open);
        if (pollen === null) {
          wanted.splice(wanted.indexOf(pair), 1);
          continue;
        }
        const luck = morningLuck + (pollen.vial === '' ? 0 : vialLuck.get(pollen.vial));
        crosses.push({ season, wave, morning, pair, pollen, luck, control: '' });
        made += 1;
      }
    }
    crosses.push(...controls(draw, season, wave, mornings[1], open));
  }
  return crosses;
}

/** One flower selfed and one left alone in each wave. */
function controls(draw, season, wave, morning, open) {
  const plants = [...open.get(morning)];
  const selfed = draw.pick(plants, () => 1);
  const bare = draw.pick(plants, () => 1);
  const fresh = { storage: 'fresh', collected: morning, age: 0, vial: '' };
  const none = { storage: '', collected: '', age: '', vial: '' };
  return [
    { season, wave, morning, pair: [selfed, selfed, null], pollen: fresh, luck: 0, control: 'selfed' },
    { season, wave, morning, pair: [bare, '', null], pollen: none, luck: 0, control: 'unpollinated' },
  ];
}

/** What became of the flower: outcome, dates, seeds and sowing. */
function fate(draw, cross) {
  const p = cross.control === '' ? probability(cross.pair, cross.pollen, cross.luck) : 0;
  const set = draw.chance(p);
  const checked = day(cross.morning) + draw.whole(14, 17);
  const blank = { checkedOn: '', harvestedOn: '', seeds: '', sown: '', germinated: '', weight: '', note: '' };
  if (checked > day(AS_OF)) return { ...blank, outcome: 'pending' };
  const seen = { ...blank, checkedOn: iso(checked) };
  if (cross.control === '' && draw.chance(LOST)) return { ...seen, outcome: 'unknown', note: 'tag gone' };
  if (!set) return { ...seen, outcome: 'none' };
  if (draw.chance(DROPPED)) return { ...seen, outcome: 'dropped' };
  return { ...seen, outcome: 'fruit', ...harvest(draw, cross) };
}

function harvest(draw, cross) {
  const ripe = day(cross.morning) + draw.whole(33, 46);
  if (ripe > day(AS_OF)) return {};
  const plenty = cross.pollen.storage === 'fresh' ? 5.3 : 5.0;
  const seeds = Math.max(1, Math.round(Math.exp(plenty + 0.45 * draw.normal())));
  const weight = Math.round(60 + 45 * Math.log1p(seeds / 40) + 12 * draw.normal());
  const picked = { harvestedOn: iso(ripe), seeds, weight };
  if (cross.season === '2025' || !draw.chance(0.4)) return picked;
  const sown = Math.min(
    seeds,
    draw.pick([20, 30, 40], () => 1),
  );
  let germinated = 0;
  for (let i = 0; i < sown; i += 1) if (draw.chance(0.78)) germinated += 1;
  return { ...picked, sown, germinated };
}

/** How the age of the pollen was written down: with the vial, as a date or in days, or not at all. */
function ageNoted(draw, { storage, collected, age, vial }) {
  if (storage === 'fresh' || storage === '') return ['', ''];
  if (vial !== '') return draw.chance(0.3) ? [collected, ''] : ['', ''];
  return draw.chance(0.5) ? [collected, ''] : ['', age];
}

const CROSS_COLUMNS =
  'cross_id,pollination_date,seed_parent,pollen_parent,storage,pollen_collected,pollen_age_days,vial,outcome,season,' +
  'grower,wave,checked_on,harvested_on,bagged,control,seeds,sown,germinated,fruit_weight_g,note';
const VIAL_COLUMNS = 'vial,pollen_parent,collected,storage,doses_left,thaws,note';
const FLOWER_COLUMNS = 'seed_parent,flowers,opens_from,opens_to';

const cell = (value) =>
  /[",\n]/.test(String(value)) ? `"${String(value).replaceAll('"', '""')}"` : String(value);
const csv = (columns, rows) => `${[columns, ...rows.map((row) => row.map(cell).join(','))].join('\n')}\n`;

function crossRows(draw, crosses) {
  const numbers = new Map();
  return crosses.map((cross) => {
    const number = (numbers.get(cross.season) ?? 0) + 1;
    numbers.set(cross.season, number);
    const { season, wave, morning, pair, pollen, control } = cross;
    const [collected, age] = ageNoted(draw, pollen);
    const end = fate(draw, cross);
    const id = `${season.slice(2)}-${String(number).padStart(3, '0')}`;
    const bagged = draw.chance(0.95) ? 'yes' : 'no';
    return [
      ...[
        id,
        morning,
        pair[0],
        pair[1],
        pollen.storage,
        collected,
        age,
        pollen.vial,
        end.outcome,
        season,
        GROWER,
      ],
      ...[wave, end.checkedOn, end.harvestedOn, bagged, control, end.seeds, end.sown, end.germinated],
      ...[end.weight, end.note],
    ];
  });
}

/** The mean loss by freezing over the frozen crosses, all else being equal: the truth to be found again. */
function trueLoss(crosses) {
  const fresh = { storage: 'fresh', age: 0 };
  const losses = crosses
    .filter(({ pollen }) => pollen.storage === 'frozen')
    .map(
      ({ pair, pollen, luck }) => probability(pair, pollen, luck, fresh) - probability(pair, pollen, luck),
    );
  return losses.reduce((sum, loss) => sum + loss, 0) / losses.length;
}

/** The three files by name, and the truth behind them. */
export function demoSeason(seed = SEED) {
  const draw = drawer(seed);
  const crosses = pollinations(draw);
  return {
    files: {
      'crosses.csv': csv(CROSS_COLUMNS, crossRows(draw, crosses)),
      'vials.csv': csv(VIAL_COLUMNS, VIALS),
      'flowers.csv': csv(FLOWER_COLUMNS, NEXT_SEASON),
    },
    trueLoss: trueLoss(crosses),
  };
}

function main(check) {
  let differing = 0;
  for (const [name, text] of Object.entries(demoSeason().files)) {
    const path = fileURLToPath(new URL(`../data-demo/${name}`, import.meta.url));
    if (!check) writeFileSync(path, text);
    else if (readFileSync(path, 'utf8') !== text) {
      differing += 1;
      console.error(`data-demo/${name} differs from what scripts/demo-data.mjs writes`);
    }
  }
  process.exitCode = differing > 0 ? 1 : 0;
}

if (process.argv[1] === fileURLToPath(import.meta.url)) main(process.argv.includes('--check'));
