/** What `fruitodds --help` says, in Spanish. */

export const helpWords = {
  title: 'fruitodds: cuajado de la polinización a mano, de la tabla de una temporada al informe.',
  commands: {
    check: 'qué está mal en los archivos, línea por línea',
    analyse: 'los números: cuajado, fresco frente a guardado, viales',
    report: 'el informe, una página para leer, imprimir o enviar',
    site: 'todas las páginas sobre la temporada, con descargas',
    sheet: 'el plan de la próxima temporada para imprimir; SALIDA.csv: a rellenar',
    clean: 'los archivos tal como se entendieron, limpios y descritos',
    template: 'archivos vacíos para rellenar, las columnas explicadas, un ejemplo',
  },
  files:
    'Los archivos son CSV o .xlsx; sus columnas dicen qué contienen. - lee la entrada estándar. Por ejemplo:',
  options: 'Opciones (entre paréntesis, lo que vale si no se dan):',
  option: {
    vials: 'el archivo de los viales de polen guardado',
    flowers: 'el archivo de las flores previstas para la próxima temporada',
    json: 'imprimir el resultado como JSON',
    csv: 'con `check`: imprimir lo encontrado como CSV, una fila por hallazgo',
    output: 'dónde escribir: una página con `report` y `sheet`, si no una carpeta (también -o)',
    'use-on': 'día de uso del polen guardado (un año después de la última polinización)',
    'as-of': 'día hasta el que han ocurrido las cosas (la última fecha de los archivos)',
    'date-order': 'cómo se leen fechas como 03/04/2025: dmy, mdy o ymd',
    'date-system': 'desde qué año cuenta la hoja de cálculo sus números de días: 1900 o 1904 (1900)',
    map: 'leer un encabezado suyo como una de las columnas',
    same: 'dos nombres de una misma planta; se conserva el primero',
    storage: 'leer una palabra propia de almacenamiento como fresh, room, refrigerated o frozen',
    level: 'nivel de los márgenes (0.95)',
    endpoint: 'initial: frutos en la revisión; final: frutos cosechados (initial)',
    'age-scale': 'escala de la edad del polen: days o log1p-days',
    worth: 'cuajado más bajo que merece una flor, como 0.2 (la mitad del polen fresco)',
    'same-plants': 'las plantas con el mismo nombre de distintos cultivadores son una sola',
    mix: 'con `sheet`: most-fruit, balanced o most-varieties (balanced)',
    must: 'plan: el cruce A × B recibe al menos 2 flores',
    'at-most': 'plan: como mucho 5 flores reciben polen de A; "A x B=5": de B sobre A',
    settings: 'tomar opciones de un archivo guardado; las dadas aquí prevalecen',
    'save-settings': 'guardar lo dicho sobre los archivos, para el año que viene',
    language: 'idioma de páginas, mensajes y encabezados de `template`: en, de, es o fr (en)',
    anonymous: 'una copia con códigos para compartir; summary: nada sobre plantas sueltas (codes)',
    key: 'dónde se guarda la clave de esas copias (fruitodds-key.json)',
    help: 'mostrar este texto (también -h)',
    version: 'mostrar la versión',
  },
  status:
    'Código de salida: 0 bien; 1 hecho, con errores o advertencias en los archivos; 2 no se pudo hacer nada.',
};

const PLACEHOLDERS: ReadonlyMap<string, string> = new Map([
  ['FILE', 'ARCHIVO'],
  ['OUT', 'SALIDA'],
  ['FOLDER', 'CARPETA'],
  ['DATE', 'FECHA'],
  ['ORDER', 'ORDEN'],
  ['YEAR', 'AÑO'],
  ['"HEADER=column"', '"ENCABEZADO=columna"'],
  ['LEVEL', 'NIVEL'],
  ['ENDPOINT', 'CRITERIO'],
  ['SCALE', 'ESCALA'],
  ['MIX', 'REPARTO'],
  ['LANGUAGE', 'IDIOMA'],
]);

export function placeholder(typed: string): string {
  return PLACEHOLDERS.get(typed) ?? typed;
}
