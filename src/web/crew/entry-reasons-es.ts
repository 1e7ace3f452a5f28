import { type Phrase, phraseBook } from '../../drawing/spanish/phrase-book.ts';
import { worksReasonInSpanish } from '../../drawing/spanish/works-reasons.ts';
import { WORKS_NAMES } from '../../drawing/what-if-words.ts';
import type { CatalogueKind } from '../../season/catalogue-entry.ts';

const works = (Object.keys(WORKS_NAMES.en) as CatalogueKind[]).map(
  (kind): Phrase => [WORKS_NAMES.en[kind], WORKS_NAMES.es[kind]],
);

const book = phraseBook(
  [
    // a number as it was written
    [
      'not a number; write digits with a decimal point, as 5.5',
      'no es un número; escriba cifras con punto decimal, como 5.5',
    ],
    ['a decimal comma; write a point, as {}', 'tiene coma decimal; escriba un punto, como {}'],
    [
      'thousands are separated; write the digits only, as {}',
      'los miles están separados; escriba solo las cifras, como {}',
    ],
    [
      "a unit is written in the cell; write the number only, the unit is in the column's name",
      'trae la unidad; escriba solo el número, la unidad ya está al lado',
    ],
    [
      'a number too large to be meant; write the digits with a decimal point',
      'es un número demasiado grande; escriba las cifras con punto decimal',
    ],
    [
      'a number too small to be meant; write the digits with a decimal point, or 0',
      'es un número demasiado chico; escriba las cifras con punto decimal, o 0',
    ],
    [
      'written in powers of ten, as spreadsheets do; write the digits, as {}',
      'está en potencias de diez; escriba las cifras, como {}',
    ],
    ['not a whole number; write one without decimals', 'no es un número entero; escríbalo sin decimales'],
    ['outside the allowed {} to {}; {}', 'fuera de lo permitido, de {} a {}; corríjalo'],
    ['in the future (today is {}); {}', 'en el futuro (hoy es {}); corrija el día'],
    ['not one of the words it can be; write one of {}', 'no es una de las palabras que puede ser'],
    [
      'nothing was found on this row; fill in what was, or leave the row out',
      'no se anotó nada; anote lo que encontró',
    ],
    // against what is known of the post
    [
      'before fence {} was installed ({} at the earliest); correct one of them',
      'antes de que se construyera la cerca {} (lo más temprano, {}); corrija uno de los dos',
    ],
    [
      'a {}, but an inspection by {} gives no number at the groundline; enter it with an inspection by {}, or correct the column',
      'así como revisa no se mide eso a ras de suelo; elija otra manera de revisar, o corrija el campo',
    ],
    [
      'a {}, but an inspection by {} gives {}; enter it with an inspection by {}, or correct the column',
      'así como revisa no se mide eso; elija otra manera de revisar, o corrija el campo',
    ],
    [
      'a hollow is measured by drill-resistance, not by {}; enter it with an inspection by drill-resistance',
      'un hueco se mide por resistencia al taladro; elija esa manera de revisar',
    ],
    [
      'wider than the post as installed, {}; correct the number, or the section',
      'más ancho que el poste como se instaló, {}; corrija el número, o dígale la medida a la oficina',
    ],
    [
      'longer than round the post as installed, {}; correct the number, or the section',
      'más largo que el contorno del poste como se instaló, {}; corrija el número, o dígale la medida a la oficina',
    ],
    [
      'deeper than half of the post as installed, {}; did you mean the width left? that is a residual width',
      'más hondo que la mitad del poste como se instaló, {}; si es el ancho que queda, anótelo como ancho sano',
    ],
    [
      'deeper than half of the post as installed, {}; measure from one face',
      'más hondo que la mitad del poste como se instaló, {}; mida desde una cara',
    ],
    [
      'with {} of width lost it leaves nothing of the post, {} as installed; correct it, or write broken',
      'con {} de ancho perdido no queda nada del poste, que se instaló de {}; corríjalo, o anote roto',
    ],
    [
      'deeper than the post, {}; give the depth of the cut',
      'más hondo que el poste, {}; anote la profundidad del corte',
    ],
    [
      'post {} of fence {} was set on {} at the earliest, after the inspection of {}; correct one of them',
      'el poste {} de la cerca {} se puso lo más temprano el {}, después de la inspección del {}; dígaselo a la oficina',
    ],
    [
      'post {} of fence {} does not rot, so its groundline tells nothing; leave it empty and give its lean, collar or rail connection',
      'el poste {} de la cerca {} no se pudre: a ras de suelo no dice nada; déjelo vacío y anote inclinación, collar o unión de travesaños',
    ],
    [
      'fence {} had {} on {}; correct the number, or the day',
      'la cerca {} no tenía ese poste ese día; corrija el número',
    ],
    [
      'less than a third of the installed width, {}; if it is the depth lost, it belongs under depth',
      'menos de la tercera parte del ancho instalado, {}; si es lo que se perdió, va como pudrición',
    ],
    [
      'post {}: {}, but {}, more than the errors of both allow, and no swap is recorded between; check both, or enter the swap',
      'el poste {} tenía antes más pudrición que ahora, más de lo que permite el error de las dos mediciones, y no consta un cambio en medio; revise las dos, o dígale a la oficina que se cambió',
    ],
    [
      'post {} is found broken, but {} says that it stood {}; check both',
      'el poste {} se encontró roto, pero una tormenta anotada dice que quedó en pie; dígaselo a la oficina',
    ],
    [
      'inspection {} is one of fence {}; give that one another ref by an import',
      'la clave de inspección {} ya es de la cerca {}; dígaselo a la oficina',
    ],
    // finishing a visit
    ['fence {} is not in the register', 'la cerca {} no está en el registro'],
    [
      'fence {}, {}: not entered for post {}, to which it does nothing',
      'cerca {}, {}: no se anotó para el poste {}, al que no le hace nada',
    ],
    ['fence {}, {}: {}', 'cerca {}, {}: {}'],
    ['{} is past: at the site it is {}', 'el {} ya pasó: en el sitio es {}'],
    ['{} is still to come: at the site it is {}', 'el {} todavía no llega: en el sitio es {}'],
    ['it is done already, and what was done is in the register', 'ya está hecha, y lo que se hizo está en el registro'],
    ['it was missed, and its fences are back in the plan', 'no se hizo, y sus cercas volvieron al plan'],
    ['it is cancelled, and its fences are back in the plan', 'está anulada, y sus cercas volvieron al plan'],
    ['fence {} is not on this visit; its fences are {}', 'la cerca {} no está en esta visita; sus cercas son {}'],
    ['fence {} is said to be done and not to be done', 'la cerca {} está marcada como hecha y como no hecha'],
    ['fence {}: {} hours cannot be', 'cerca {}: {} horas no pueden ser'],
    ['fence {}: {} hours, and {} were planned', 'cerca {}: {} horas, y se habían planeado {}'],
    ['fence {}, {}', 'cerca {}, {}'],
    ...works,
  ],
  (reason) => {
    const said = worksReasonInSpanish(reason);
    return said === reason ? null : said;
  },
);

/** Why something that a crew entered is doubtful or not taken, in Spanish; as it stands where no phrase has it. */
export const entryReasonInSpanish = (reason: string): string => book(reason) ?? reason;
