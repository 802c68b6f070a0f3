/** What the season review says in its tables, folds and gaps. */

import type { FixedModel } from '../../analysis/models.ts';
import { fileKind } from './command.ts';
import { filesIn, flowersIn, rowsIn } from './nouns.ts';

export const reviewPage = {
  noFlowers: 'No se pudo leer ninguna flor.',
  leftOutOfSummary: 'Lo que trata de plantas, parejas y viales sueltos no se incluye en este resumen.',
  reasonsCaption: 'Filas que quedan fuera, por motivo',
  reasonColumns: ['Motivo', 'Filas'],
  wavesFold: 'Por temporada y oleada',
  wavesCaption: 'Cuajado de cada oleada de flores',
  nothingFound: 'En los archivos no hay nada más que mirar.',
  toMend: 'En los archivos conviene mirar:',
  noticedFold: 'Cómo se leyeron los encabezados y las palabras',
  nothingStored: 'No se usó polen guardado, así que no hay nada que comparar.',
  pairsDiffer:
    'El polen guardado suele ir a otras parejas que el fresco. «En igualdad de condiciones» compara solo lo que pasó en las mismas ' +
    'parejas, así que es el número que cuenta; exige al menos tres parejas con ambos tipos y ambos resultados.',
  nothingFades: 'No se usó polen guardado, así que no se puede decir nada de cómo se pierde.',
  otherAgesFold: 'Polen guardado de otras maneras, por edad',
  otherAgesCaption: 'Cuajado según la edad del polen guardado de otras maneras',
  curveEnds:
    'La curva acaba en el polen más viejo que se probó; los veredictos de viales más viejos la prolongan y van marcados. Cómo germina el polen en una placa es una pregunta distinta de ' +
    'cómo cuaja el fruto; las dos respuestas pueden no coincidir.',
  selfIndexesFold: 'El polen de la propia planta, como índice',
  reasonsFold: 'Por qué, vial por vial',
  verdictsCaption: 'El motivo de cada veredicto',
  verdictColumns: ['Vial', 'Veredicto', 'Motivo'],
  discardingIsFinal:
    'Desechar polen no tiene vuelta atrás, y estos veredictos son consejos a partir de pocas flores. Si un veredicto le sorprende, ' +
    'polinice dos o tres flores con ese vial antes de seguirlo.',
  settleFold: 'En números',
  settleCaption: 'Flores que lo aclararían',
  filesCaption: 'Archivos que se leyeron',
  fileColumns: ['Archivo', 'Tipo', 'Filas', 'SHA-256'],
  fileKind,
  optionsFold: 'Las opciones',
  optionsCaption: 'Opciones, tal como se usaron',
  made: (version: string, files: number, rows: number): string =>
    `Hecho con fruitodds ${version} a partir de ${filesIn(files)} con ${rowsIn(rows)} de cruces.`,
};

const METHODS: Readonly<Record<NonNullable<FixedModel['method']>, string>> = {
  firth: 'verosimilitud penalizada de Firth',
  'maximum-likelihood': 'máxima verosimilitud',
};

/** The folded tables of the section on how it was worked out. */
export const workingPage = {
  none: 'ninguno',
  span: (lower: string, upper: string): string => `${lower} a ${upper}`,
  textbookFold: 'El modelo de manual, para estadísticos',
  textbookCaption: ({ method, flowers }: Pick<FixedModel, 'method' | 'flowers'>): string =>
    `Regresión logística por ${METHODS[method ?? 'maximum-likelihood']}, escala logit, ${flowersIn(flowers)}, sin distribuciones a priori`,
  textbookColumns: ['Término', 'Estimación', 'Margen', 'p'],
  fit: (auc: string, brier: string): string =>
    `Comprobación del ajuste: área bajo la curva ROC ${auc}, puntuación de Brier ${brier}. Aquí todas las flores se tratan por igual, ` +
    'así que este modelo confunde el polen con la pareja; se muestra para comparar, no para decidir.',
  spreadsFold: 'Cuánto difieren las plantas, las parejas y las mañanas',
  spreadsCaption: (flowers: number): string =>
    `Efectos aleatorios cruzados, escala logit, ${flowersIn(flowers)}, sin distribuciones a priori`,
  spreadColumns: ['Entre', 'Desviación típica'],
  spreadsTooSmall:
    'Por la aproximación de Laplace, que las hace demasiado pequeñas donde las parejas tienen pocas flores: con las salamandras de ' +
    'McCullagh y Nelder (1989) las varianzas salieron unas 15 en 100 demasiado pequeñas.',
  priorsFold: 'Los supuestos, en números',
  priorsCaption: 'Distribuciones a priori, escala logit',
  priorColumns: ['Para', 'Tipo', 'Centro', 'Dispersión'],
};
