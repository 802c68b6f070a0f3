/** Failures of what was asked for: commands, files to be read, options, open questions. */

import { causeOf, type FailureSentence, meant, RULES, SEE_HELP } from './failure-details.ts';
import { placeholder } from './help.ts';
import { joined } from './numbers.ts';

const COMMANDS = 'check, analyse, report, site, sheet, clean y template';

/** Commands and options as they were typed. */
const ASKED = {
  'command-missing': () => ({
    message: 'No se pidió nada.',
    fix: `Indique una de las órdenes ${COMMANDS}, por ejemplo: fruitodds check crosses.csv`,
  }),
  'command-unknown': ({ command, nearest }) => ({
    message: `No existe la orden "${command}".`,
    fix: `${meant(nearest)}Las órdenes son ${COMMANDS}.`,
  }),
  'option-unknown': ({ option, nearest }) => ({
    message: `No existe la opción ${option}.`,
    fix: meant(nearest) + SEE_HELP,
  }),
  'option-not-available': ({ option }) => ({
    message: `${option} no está disponible en esta versión.`,
    fix: `Omítala. ${SEE_HELP}`,
  }),
  'option-not-for-command': ({ option, command, use }) => ({
    message: `La orden ${command} no admite ${option}.`,
    fix: `Omita ${option}, o use ${joined(String(use).split(', '), 'o')}.`,
  }),
  'options-exclude': ({ option, other }) => ({
    message: `${option} y ${other} no se pueden pedir a la vez.`,
    fix: 'Omita una de las dos.',
  }),
  'option-needs-value': ({ option, placeholder: typed }) => ({
    message: `La opción ${option} necesita un valor.`,
    fix: `Escriba ${option} ${placeholder(String(typed))}. ${SEE_HELP}`,
  }),
  'option-takes-no-value': ({ option, value }) => ({
    message: `La opción ${option} no lleva valor, y se dio "${value}".`,
    fix: `Escriba solo ${option}.`,
  }),
  'option-value': ({ option, value, rule, allowed, file }) => ({
    message: `La opción ${option} no puede ser "${value}"${file ? `, como figura en ${file}` : ''}.`,
    fix: RULES[String(rule)]!(allowed),
  }),
  'option-twice': ({ option }) => ({
    message: `La opción ${option} se dio dos veces.`,
    fix: 'Déla una sola vez.',
  }),
} satisfies Readonly<Record<string, FailureSentence>>;

/** Files to be read, and what they hold. */
const READ = {
  'file-not-expected': ({ file }) => ({
    message: `Una plantilla se hace sin archivos, pero se nombró ${file}.`,
    fix: `Para decir dónde escribirla, use -o: fruitodds template -o ${file}`,
  }),
  'file-missing': ({ command }) => ({
    message: `No se nombró ningún archivo para ${command}.`,
    fix: `Nombre el archivo de cruces, por ejemplo: fruitodds ${command} crosses.csv (o - para la entrada estándar)`,
  }),
  'file-unreadable': ({ file, cause }) => ({
    message: `${file} no se puede leer: ${causeOf(cause)}.`,
    fix: 'Revise el nombre, la carpeta y si tiene permiso para leer el archivo.',
  }),
  'standard-input-twice': () => ({
    message: 'La entrada estándar (-) se nombró dos veces.',
    fix: 'Nombre - para un solo archivo, y los demás por su nombre.',
  }),
  'plant-unknown': ({ option, plant, nearest }) => ({
    message: `${option} nombra ${plant}, que no es una planta de ninguno de los archivos.`,
    fix: `${meant(nearest)}Escriba el nombre como está en los archivos.`,
  }),
  'wish-unclear': ({ option, value }) => ({
    message: `${option} "${value}" se puede leer como dos cruces, pues hay plantas con ambos pares de nombres.`,
    fix: 'Dé a una de las plantas otro nombre en los archivos.',
  }),
  'wish-without-flowers': ({ option }) => ({
    message: `${option} trata del plan, y sin un archivo de flores no hay plan.`,
    fix: 'Añada --flowers y un archivo con las columnas seed_parent y flowers, u omita la opción.',
  }),
  'question-open': ({ cause, remedy, questions }) => ({
    message: `${Number(questions ?? 1) > 1 ? `${questions} preguntas` : 'Una pregunta'} que solo usted puede responder: ${cause}`,
    fix: String(remedy),
  }),
  'no-usable-row': ({ files, cause, remedy }) => ({
    message: `No se puede usar ninguna fila de ${files}.${cause ? ` ${cause}` : ''}`,
    fix: remedy
      ? String(remedy)
      : 'Ejecute fruitodds check con los archivos: dice qué está mal en cada fila.',
  }),
  'nothing-entered': ({ files, remedy }) => ({
    message: `Todavía no se ha anotado ninguna flor en ${files}.`,
    fix: String(remedy),
  }),
  'no-crosses': ({ files }) => ({
    message: `No hay ningún archivo de cruces entre ${files}.`,
    fix: 'Nombre primero el archivo con una fila por flor polinizada. Un archivo se reconoce por sus columnas.',
  }),
  'no-usable-outcome': ({ rows }) => ({
    message: `Ninguna de las ${rows} filas tiene todavía un resultado: son todas etiquetas perdidas, pendientes o controles.`,
    fix: 'Complete la columna outcome con fruit, dropped o none en cuanto se hayan mirado las flores.',
  }),
  'no-plan': ({ cause }) => ({
    message: `No hay un plan del que hacer una hoja. ${cause}`,
    fix: 'Mire el archivo de flores y el de viales: un plan necesita flores, y polen que pueda llegar a ellas.',
  }),
} satisfies Readonly<Record<string, FailureSentence>>;

export const INPUT_FAILURES = { ...ASKED, ...READ };
