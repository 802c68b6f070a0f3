/** Codes of the analysis in Spanish: why there is no number, why a row does not count, what a verdict rests on. */

/** Why an estimate is missing. */
const BECAUSE: Readonly<Record<string, string>> = {
  'no-flowers': 'No hay ninguna flor con resultado conocido.',
  'no-aged-flowers': 'No se conoce la edad del polen de ninguna flor.',
  'no-fresh-flower': 'Ninguna flor con resultado conocido recibió polen fresco.',
  'one-outcome':
    'Todas las flores con resultado conocido acabaron igual: o cuajaron todas o no cuajó ninguna.',
  'terms-separated':
    'Un tipo de polen, o una de sus edades, cuajó siempre o nunca, así que el modelo corriente no da respuesta.',
  'spread-without-end':
    'Unas plantas, parejas o mañanas cuajaron siempre y las demás nunca, así que cuánto difieren queda sin límite.',
  'fewer-than-two-pairs': 'Hay menos de dos parejas de plantas que comparar.',
  'zero-count':
    'En las parejas que podían decirlo, un tipo de polen cuajó siempre o nunca, así que la razón queda sin límite.',
  'no-pairs-with-both': 'Ninguna pareja de plantas recibió a la vez polen fresco y polen de este tipo.',
  'no-informative-pairs':
    'En ninguna pareja de plantas con ambos tipos de polen hubo flores que cuajaran y otras que no, así que no se puede separar el efecto del polen del de la pareja.',
  'too-few-pairs-with-both':
    'Menos de tres parejas de plantas tienen ambos tipos de polen y ambos resultados, así que no se puede separar el efecto del polen del de la pareja.',
  separated:
    'En las parejas que podían decirlo, un tipo de polen fue siempre mejor, así que la razón queda sin límite.',
  'one-age-or-vial': 'El polen guardado así se probó a una sola edad o de un solo lote.',
  'past-oldest-age': 'Dentro de las edades probadas, el cuajado no ha bajado a la mitad.',
  'method-never-tried': 'Ninguna flor con resultado y edad conocidos recibió polen guardado así.',
  'used-before-collected': 'El día de uso es anterior al día en que se recogió el polen.',
  'no-seed-parent':
    'No queda ninguna planta madre para este polen: las demás son la misma planta o constan como incompatibles.',
  'no-pairs-in-both-seasons': 'Ninguna pareja de plantas recibió el mismo tipo de polen en ambas temporadas.',
  'too-few-pairs-in-both-seasons':
    'Menos de tres parejas de plantas recibieron el mismo tipo de polen en ambas temporadas con ambos resultados, así que no se puede separar el efecto de la temporada del de la pareja.',
  'no-storage-in-both-directions': 'Los dos sentidos del cruce no tuvieron ningún tipo de polen en común.',
  'no-variation': 'Todas las flores de cada tipo acabaron igual, así que no hay margen.',
  'no-strata': 'No hay nada dentro de lo cual comparar.',
  'no-failure': 'No falló ninguna flor, así que la razón no tiene margen.',
  'background-always-took':
    'Todas las flores de control dieron fruto, así que los cruces no pueden mostrar nada más.',
  unbounded: 'Con tan pocas flores de control, ese extremo del margen queda abierto.',
  'no-fresh-cross': 'Ninguna flor de las mismas plantas con resultado conocido se cruzó con polen fresco.',
  'selfed-never-took': 'Hasta ahora no cuajó ninguna flor autopolinizada, así que la razón no tiene margen.',
  'crosses-never-took': 'No cuajó ningún cruce de las mismas plantas, así que no hay con qué comparar.',
  'pollen-took-elsewhere': 'El mismo polen cuajó en otras plantas.',
  'pollen-failed-elsewhere': 'El mismo polen no cuajó en ninguna otra planta en la que se probó.',
  'pollen-not-tried-elsewhere': 'El mismo polen no se probó en ninguna otra planta.',
  'no-seed-counts': 'No se contaron las semillas de ningún fruto.',
  'too-few-fruits':
    'Solo se contaron las semillas de un fruto, así que no se sabe cuánto difieren los frutos entre sí.',
  'no-seeds': 'Los frutos contados no tenían semillas.',
  'no-germination-counts': 'Ninguna siembra tiene los dos números, sembradas y germinadas.',
  'too-few-lots': 'Solo se contó una siembra, así que no se sabe cuánto difieren las siembras entre sí.',
  'lots-all-alike': 'Todas las semillas sembradas acabaron igual: o germinaron todas o no germinó ninguna.',
  'zero-part': 'Una parte del producto es cero hasta ahora, así que no hay margen.',
  'no-worth': 'No se ha dicho qué cuajado merece una flor.',
  'no-average-pair': 'No hay dos parejas con una estimación, así que no hay una media con la que comparar.',
  'no-model': 'No hay un modelo de esta temporada con el que calcularlo.',
  'no-flowers-file': 'No se dio ningún archivo con las flores previstas para la próxima temporada.',
  'no-expected-flowers':
    'No se prevé ninguna flor para la próxima temporada: todas las filas del archivo de flores dicen 0.',
  'no-pollen-for-flowers':
    'No queda polen para las flores previstas: ningún vial con una dosis, ni dos plantas cruzables que florezcan la misma mañana.',
  'no-doses-left': 'No le queda ninguna dosis.',
  'mother-not-in-flower': 'El archivo de flores no prevé ninguna flor en esta planta madre.',
  'own-pollen': 'No se planea usar el polen de la propia planta.',
  'named-incompatible': 'La pareja consta como incompatible.',
  'no-common-morning': 'Las dos plantas nunca florecen la misma mañana, y ningún vial contiene este polen.',
  'no-pollen-of-father':
    'No hay polen de esta planta: no se prevé ninguna flor en ella y no se puede usar ningún vial.',
  'fewer-flowers-expected':
    'En la planta madre se esperan menos flores de las deseadas: conviene no desear más, o aumentar su número en el archivo de flores.',
  'too-little-pollen':
    'El polen que queda, o que se abre las mismas mañanas, sirve para menos flores: conviene no desear más, o corregir las dosis en el archivo de viales.',
  'other-wish-in-the-way': 'Lo impide otro deseo u otro tope: conviene bajar uno de los dos.',
  'being-worked-out': 'Todavía se está calculando.',
  'not-settled': 'El cálculo no llegó a una respuesta estable.',
  'model-not-settled': 'El cálculo no llegó a una respuesta estable.',
};

/** Why a row does not count. */
const LEFT_OUT: Readonly<Record<string, string>> = {
  'outcome-unknown': 'Se perdió la etiqueta o no se volvió a ver la flor.',
  'outcome-pending': 'Es pronto para decir qué fue de la flor.',
  'cell-blank': 'Una celda necesaria está en blanco.',
  'row-ragged': 'La fila tiene más o menos celdas que los encabezados.',
  'header-repeated': 'La fila repite los encabezados.',
  'quote-not-closed': 'Unas comillas no se cierran.',
  'control-character': 'La fila contiene un carácter que no tiene ningún texto.',
  'date-does-not-exist': 'Una fecha no existe.',
  'date-not-understood': 'Una fecha no se puede leer.',
  'date-serial': 'Una fecha es el número de día propio de una hoja de cálculo.',
  'date-implausible': 'Una fecha queda demasiado atrás o adelante.',
  'number-not-understood': 'Un número no se puede leer.',
  'number-negative': 'Un número es negativo.',
  'number-absurd': 'Un número es demasiado grande.',
  'word-not-understood': 'Una palabra no es de las que pueden estar ahí.',
  'tag-repeated': 'La fila está dos veces.',
  'tag-conflict': 'La etiqueta figura también en otra flor.',
  'future-date': 'La flor se polinizó después del último día de los archivos.',
  'selfed-with-other-pollen': 'Consta como autopolinizada, pero tiene polen de otra planta.',
  'file-repeated': 'Se dio dos veces el archivo entero.',
  'column-missing': 'Falta en el archivo una columna necesaria.',
  'column-unclear': 'Dos columnas del archivo podrían significar lo mismo.',
  'date-order-unclear': 'Las fechas del archivo se pueden leer de dos maneras.',
  'date-order-mixed': 'Las fechas del archivo están escritas en dos órdenes.',
  'table-sideways': 'Los encabezados del archivo están en una columna.',
  'parents-in-one': 'Una columna contiene a los dos padres.',
  'total-row': 'La fila es un total, no un registro.',
  'row-nearly-blank': 'La fila no contiene nada de lo que hace falta.',
  'nothing-entered': 'Todavía no se ha anotado ninguna flor en el archivo.',
  'other-format': 'El archivo no es una tabla.',
  'kind-unknown': 'Las columnas del archivo no son de las que conocemos.',
  'kind-differs': 'El archivo se dio como de otro tipo que el que dicen sus columnas.',
};

const SENTENCES: ReadonlyMap<string, string> = new Map(
  [BECAUSE, LEFT_OUT].flatMap((codes) => Object.entries(codes)),
);

/** The sentence of a code; one that has none is named as it stands. */
export function reasonSentence(code: string): string {
  return SENTENCES.get(code) ?? `Los datos no permiten saberlo (${code}).`;
}
