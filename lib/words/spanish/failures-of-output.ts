/** Failures of what was to be written: reports, sites, settings, coded copies. */

import type { FailureDetails } from '../english-failures.ts';
import { causeOf, type FailureSentence, FORMS, meant } from './failure-details.ts';

/** Where JSON breaks off, as far as it is known. */
function notJson(
  cause: FailureDetails[string] | undefined,
  line: FailureDetails[string] | undefined,
): string {
  if (cause === 'no-object') return ' (no contiene ningún { … })';
  return line ? ` (línea ${line})` : '';
}

const AFTER_O = 'Dé otro nombre después de -o, o aparte ese archivo.';
const OUTPUTS: Readonly<Record<string, string>> = {
  clean: 'los archivos limpios',
  report: 'el informe (report)',
  site: 'el sitio (site)',
  sheet: 'la hoja (sheet)',
  template: 'la plantilla (template)',
};

/** Pages and sheets. */
const PAGES = {
  'output-missing': ({ command }) => ({
    message: `No se dijo dónde escribir ${OUTPUTS[String(command)] ?? command}.`,
    fix: `Añada -o y un nombre, por ejemplo: -o ${command === 'report' ? 'report.html' : command === 'sheet' ? 'sheet.html' : 'my-season'}`,
  }),
  'output-is-input': ({ file }) => ({
    message: `${file} es uno de los archivos que hay que leer, y se sobrescribiría.`,
    fix: 'Dé otro nombre para lo que se escribe.',
  }),
  'input-in-site': ({ file, folder }) => ({
    message: `${file} hay que leerlo y está en ${folder}, que el sitio reemplazaría.`,
    fix: 'Dé al sitio una carpeta propia, por ejemplo: -o my-season',
  }),
  'site-not-ours': ({ folder, foreign }) => ({
    message: foreign
      ? `${folder} contiene también ${foreign}, que ningún sitio anterior escribió ahí; se perdería.`
      : `${folder} es un archivo, y un sitio necesita una carpeta.`,
    fix: 'Apártelo, o dé una carpeta nueva después de -o, por ejemplo: -o my-season',
  }),
  'output-other-kind': ({ file, command }) => ({
    message: `${file} lleva el nombre de otra clase de archivo que la que escribe ${command}.`,
    fix: `Dé un nombre que termine en .html${command === 'sheet' ? ' (una página) o en .csv (para rellenar)' : ''}. Para un PDF, imprima la página desde el navegador.`,
  }),
  'output-not-ours': ({ file }) => ({
    message: `${file} ya existe y no es un informe, así que no se sobrescribe.`,
    fix: AFTER_O,
  }),
  'sheet-is-there': ({ file }) => ({
    message: `${file} ya existe y puede estar rellenada, así que no se sobrescribe.`,
    fix: AFTER_O,
  }),
  'output-exists': ({ file }) => ({
    message: `${file} ya existe, y no se sobrescribe nada.`,
    fix: 'Dé otro nombre después de -o.',
  }),
  'folder-not-empty': ({ folder }) => ({
    message: `${folder} ya contiene algo, y no se sobrescribe nada.`,
    fix: 'Dé una carpeta nueva después de -o, por ejemplo: -o new-season',
  }),
  'output-not-writable': ({ file, cause }) => ({
    message: `${file} no se puede escribir: ${causeOf(cause)}.`,
    fix: 'Revise que la carpeta exista y que tenga permiso para escribir en ella.',
  }),
  'answer-too-long': () => ({
    message:
      'La respuesta es más larga de lo que puede ser un texto: se encontró demasiado en los archivos para escribirlo todo de una vez.',
    fix: 'Corrija primero lo que nombra fruitodds check, o dé menos archivos a la vez; sin --json la respuesta es más corta.',
  }),
  'internal-fault': ({ cause }) => ({
    message: `Algo falló dentro de fruitodds: ${cause}.`,
    fix: 'Es un fallo del programa, no de sus archivos. Comuníquelo, por favor, con este mensaje.',
  }),
} satisfies Readonly<Record<string, FailureSentence>>;

/** Saved settings. */
const SETTINGS = {
  'settings-not-json': ({ file, cause, line }) => ({
    message: `${file} no contiene ajustes: no es JSON${notJson(cause, line)}.`,
    fix: 'Guarde los ajustes con --save-settings, y dé ese archivo.',
  }),
  'settings-version': ({ file, version }) => ({
    message: `${file} no tiene la forma de ajustes que lee esta versión: su "version" es ${version}, no 1.`,
    fix: 'Vuelva a guardar los ajustes con --save-settings, o escriba "version": 1 en el archivo.',
  }),
  'settings-key-unknown': ({ file, key, nearest }) => ({
    message: `${file} fija "${key}", que no es un ajuste.`,
    fix: `${meant(nearest)}Quítelo o corríjalo.`,
  }),
  'settings-value': ({ file, key, form }) => ({
    message: `${file} da a "${key}" un valor que no puede tener.`,
    fix: `Escriba ${FORMS[String(form)]}.`,
  }),
  'settings-not-ours': ({ file }) => ({
    message: `${file} ya existe y no contiene ajustes, así que no se sobrescribe.`,
    fix: 'Dé otro nombre después de --save-settings, o aparte ese archivo.',
  }),
} satisfies Readonly<Record<string, FailureSentence>>;

/** Coded copies and their keys. */
const COPIES = {
  'key-without-anonymous': () => ({
    message: 'La opción --key nombra la clave de una copia codificada, y no se ha pedido ninguna.',
    fix: 'Añada --anonymous, u omita --key.',
  }),
  'summary-has-no-rows': () => ({
    message: 'Un resumen no muestra nada de plantas sueltas, así que no hay filas suyas que escribir.',
    fix: 'Escriba --anonymous=codes, o use report, site o analyse.',
  }),
  'key-not-ours': ({ file }) => ({
    message: `${file} no contiene la clave de una copia codificada, así que ni se lee ni se reemplaza.`,
    fix: 'Dé el archivo de su clave después de --key, o un nombre nuevo, por ejemplo: --key my-key.json',
  }),
  'key-shared': ({ file, folder }) => ({
    message: `${file} es la clave que convierte de nuevo los códigos en nombres, y se compartiría junto con ${folder}.`,
    fix: 'Guárdela en otro sitio: dé otro lugar después de --key.',
  }),
  'dates-too-far': ({ file }) => ({
    message:
      'Las fechas no se pueden desplazar juntas: están demasiado lejos unas de otras, o de las de la clave.',
    fix: `Corrija las fechas, o empiece una clave nueva: --key con un nombre distinto de ${file}.`,
  }),
  'leak-found': ({ file, place, what, value, more }) => ({
    message: `No se escribió nada: ${file}, ${place}, mostraría ${what} «${value}»${more ? ` (y ${more} más)` : ''}.`,
    fix: 'Es un fallo del programa, no de sus archivos. Comuníquelo, por favor, sin el nombre que muestra.',
  }),
} satisfies Readonly<Record<string, FailureSentence>>;

export const OUTPUT_FAILURES = { ...PAGES, ...SETTINGS, ...COPIES };
