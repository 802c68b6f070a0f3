/** Headers of the columns in the languages of growers, as a template shows them; each is one that the reader knows. */

export type HeaderLanguage = 'en' | 'de' | 'es' | 'fr';

type Headers = readonly (readonly [name: string, de: string, es: string, fr: string])[];

const HEADERS: Headers = [
  ['cross_id', 'Etikett', 'Etiqueta', 'Étiquette'],
  ['pollination_date', 'Bestäubungsdatum', 'Fecha de polinización', 'Date de pollinisation'],
  ['seed_parent', 'Mutterpflanze', 'Planta madre', 'Plante mère'],
  ['pollen_parent', 'Vaterpflanze', 'Planta padre', 'Plante père'],
  ['storage', 'Lagerung', 'Almacenamiento', 'Stockage'],
  ['pollen_collected', 'Pollendatum', 'Fecha del polen', 'Date du pollen'],
  ['collected', 'Pollendatum', 'Fecha del polen', 'Date du pollen'],
  ['pollen_age_days', 'Pollenalter', 'Edad del polen', 'Âge du pollen'],
  ['vial', 'Röhrchen', 'Tubo', 'Tube de pollen'],
  ['outcome', 'Ergebnis', 'Resultado', 'Résultat'],
  ['season', 'Saison', 'Temporada', 'Saison'],
  ['grower', 'Züchter', 'Cultivador', 'Cultivateur'],
  ['wave', 'Blütenwelle', 'Oleada', 'Vague'],
  ['checked_on', 'Kontrolliert am', 'Fecha de revisión', 'Date de contrôle'],
  ['harvested_on', 'Geerntet am', 'Fecha de cosecha', 'Date de récolte'],
  ['bagged', 'Eingetütet', 'Embolsada', 'Ensachée'],
  ['control', 'Kontrollart', 'Tipo de control', 'Témoin'],
  ['seeds', 'Samenzahl', 'Número de semillas', 'Nombre de graines'],
  ['sown', 'Ausgesät', 'Semillas sembradas', 'Graines semées'],
  ['germinated', 'Gekeimt', 'Semillas germinadas', 'Graines germées'],
  ['fruit_weight_g', 'Fruchtgewicht', 'Peso del fruto', 'Poids du fruit'],
  ['identified_by', 'Bestimmt von', 'Identificado por', 'Identifié par'],
  ['note', 'Bemerkung', 'Observaciones', 'Remarque'],
  ['doses_left', 'Dosen übrig', 'Dosis restantes', 'Doses restantes'],
  ['doses_filled', 'Dosen gesamt', 'Dosis totales', 'Doses au total'],
  ['thaws', 'Aufgetaut', 'Descongelaciones', 'Décongélations'],
  ['flowers', 'Blütenzahl', 'Número de flores', 'Nombre de fleurs'],
  ['opens_from', 'Erste Blüte', 'Primera flor', 'Première fleur'],
  ['opens_to', 'Letzte Blüte', 'Última flor', 'Dernière fleur'],
];

const BY_LANGUAGE = new Map(
  (['de', 'es', 'fr'] as const).map((language, i) => [
    language as HeaderLanguage,
    new Map(HEADERS.map(([name, ...headers]) => [name, headers[i]!])),
  ]),
);

/** The header of a column in a language: our own name in English, and where the language has none. */
export function columnHeader(name: string, language: HeaderLanguage): string {
  return BY_LANGUAGE.get(language)?.get(name) ?? name;
}
