// What the library's own pages say: the public names, as typedoc reads them from the sources, as sections of HTML.

import MarkdownIt from 'markdown-it';

const markdown = new MarkdownIt();

/** The pages, each with the folders of lib/ that it tells of; what stands in none of them belongs to the first. */
const TOPICS = [
  { page: 'season', title: 'A season and its answers', folders: ['season', 'analysis', 'decisions'] },
  { page: 'distributions', title: 'Distributions', folders: ['numerics'] },
  { page: 'proportions', title: 'Proportions', folders: ['proportions'] },
  { page: 'regression', title: 'Regression', folders: ['regression'] },
  { page: 'pages', title: 'Charts and pages', folders: ['charts', 'notebook'] },
  { page: 'words', title: 'Words', folders: ['words'] },
];

/** The topics, each with its public names as typedoc gives them. */
export function byTopic(project) {
  const topicOf = ({ sources }) => {
    const folder = sources?.[0]?.fileName.split('/')[0];
    return TOPICS.find(({ folders }) => folders.includes(folder)) ?? TOPICS[0];
  };
  return TOPICS.map((topic) => ({
    ...topic,
    names: (project.children ?? []).filter((child) => topicOf(child) === topic),
  }));
}

const escaped = (text) =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;');

/** Code in which every public name leads to its place. */
function linkedCode(text, places) {
  return text
    .split(/([A-Za-z_$][\w$]*)/)
    .map((piece) => {
      const place = places.get(piece);
      return place === undefined ? escaped(piece) : `<a href="${place}">${piece}</a>`;
    })
    .join('');
}

const said = (parts = []) => parts.map(({ text }) => text).join('');
const prose = (parts) => markdown.render(said(parts));

function definitions(rows) {
  if (rows.length === 0) return '';
  const row = ([name, text]) => `<dt><code>${name}</code></dt>\n<dd>${text}</dd>\n`;
  return `<dl>\n${rows.map(row).join('')}</dl>\n`;
}

const TAGS = [
  ['@returns', 'Returns'],
  ['@throws', 'Throws'],
  ['@source', 'Source'],
  ['@example', 'Example'],
];

function tagged(comment) {
  return TAGS.flatMap(([tag, name]) =>
    (comment?.blockTags ?? [])
      .filter((block) => block.tag === tag)
      .map(({ content }) => `<p><strong>${name}</strong></p>\n${prose(content)}`),
  ).join('');
}

/** What stands between the name and its type: a question mark where it may be left out. */
const optional = ({ flags, defaultValue }) => (flags.isOptional || defaultValue !== undefined ? '?' : '');

function callText(name, { parameters = [], type }) {
  const given = parameters.map((one) => `${one.name}${optional(one)}: ${one.type}`);
  return `${name}(${given.join(', ')}): ${type}`;
}

const LONGEST_TYPE = 400;

function typeText({ name, type }) {
  const text = `${name}: ${type}`;
  return text.length <= LONGEST_TYPE ? text : name;
}

/** One public name: how it is written, what it is for, its parts, and what its tags say. */
export function nameMarkup(child, places) {
  const elsewhere = new Map([...places].filter(([name]) => name !== child.name));
  const code = (text) => linkedCode(text, elsewhere);
  const written = (text) => `<pre><code>${code(text)}</code></pre>\n`;
  if (child.signatures !== undefined) {
    return child.signatures
      .map((signature) => {
        const parameters = (signature.parameters ?? []).map((one) => [
          one.name,
          markdown.renderInline(said(one.comment?.summary)),
        ]);
        const { comment = child.comment } = signature;
        return `${written(callText(child.name, signature))}${prose(comment?.summary)}${definitions(parameters)}${tagged(comment)}`;
      })
      .join('');
  }
  const members = (child.children ?? []).map((member) => [
    code(`${member.name}${optional(member)}: ${member.type ?? 'a function'}`),
    markdown.renderInline(said((member.comment ?? member.signatures?.[0]?.comment)?.summary)),
  ]);
  const type = child.type === undefined ? '' : written(typeText(child));
  return `${type}${prose(child.comment?.summary)}${definitions(members)}${tagged(child.comment)}`;
}
