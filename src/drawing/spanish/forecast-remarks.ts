import { phraseBook } from './phrase-book.ts';
import { registerNameInSpanish } from './register-names.ts';
import { windCurveInSpanish } from './wind-curve.ts';

const book = phraseBook(
  [
    [
      'The run is too short to have line posts: it is judged by its end posts.',
      'El tramo es demasiado corto para tener postes de línea: se juzga por los postes de sus extremos.',
    ],
    ['No risk is given: {}.', 'No se da ningún riesgo: {}.'],
    [
      'The code tables at hand list no design values for this species; those of {} stand in.',
      'Las tablas del código que hay no dan valores de diseño para esta madera; se usan los de {}.',
    ],
    ['western woods', 'maderas del oeste'],
    ['western cedars', 'cedros del oeste'],
    ['redwood', 'secuoya'],
    [
      'The soil counts as saturated: sand holds a footing with about half its dry strength.',
      'El suelo cuenta como saturado: la arena sujeta un cimiento con más o menos la mitad de su fuerza en seco.',
    ],
    [
      'The code check takes the bearing of gravel (200 psf/ft); dense sand without gravel has 150 psf/ft.',
      'La revisión por código toma el apoyo de la grava (200 psf/ft); la arena densa sin grava tiene 150 psf/ft.',
    ],
    [
      'Codes give no presumptive bearing for unprepared fill; the value for sand stands in.',
      'Los códigos no dan un apoyo supuesto para un relleno sin preparar; se usa el de la arena.',
    ],
    [
      'The readings disagree with the model: it gave them less than one chance in {}. The rot pace is taken twice as uncertain; check treatment class, install date and readings.',
      'Las mediciones no cuadran con el modelo: les daba menos de una probabilidad en {}. El ritmo de pudrición se toma el doble de incierto; revise la clase de tratamiento, la fecha de construcción y las mediciones.',
    ],
    [
      'The storm reports fit hardly anything the model holds possible: check the gusts and what is recorded of the footings.',
      'Los informes de tormenta casi no caben en nada de lo que el modelo tiene por posible: revise las ráfagas y lo anotado de los cimientos.',
    ],
    [
      'Post {} is recorded dangerous and closed off: keep people away.',
      'Poste {}: anotado como peligroso y acordonado. Mantenga alejada a la gente.',
    ],
    [
      'Posts {} are recorded dangerous and closed off: keep people away.',
      'Postes {}: anotados como peligrosos y acordonados. Mantenga alejada a la gente.',
    ],
    [
      'Post {} is recorded broken and holds nothing; what the posts beside take over is not counted.',
      'Poste {}: anotado como roto, no aguanta nada; lo que cargan los postes de al lado no se cuenta.',
    ],
    [
      'Posts {} are recorded broken and hold nothing; what the posts beside take over is not counted.',
      'Postes {}: anotados como rotos, no aguantan nada; lo que cargan los postes de al lado no se cuenta.',
    ],
    [
      'Post {} is recorded leaning: stay away in wind.',
      'Poste {}: anotado como inclinado. Aléjese cuando haya viento.',
    ],
    [
      'Posts {} are recorded leaning: stay away in wind.',
      'Postes {}: anotados como inclinados. Aléjese cuando haya viento.',
    ],
    [
      'The collar of post {} is cracked: its footing counts no wider than the post.',
      'El collar del poste {} está agrietado: su cimiento cuenta como del ancho del poste.',
    ],
    [
      'The collars of posts {} are cracked: their footings count no wider than the posts.',
      'Los collares de los postes {} están agrietados: sus cimientos cuentan como del ancho de los postes.',
    ],
    [
      'Post {} is hollow; the cavity is taken to stay as wide as found.',
      'Poste {}: hueco por dentro. Se toma que el hueco sigue del ancho con que se encontró.',
    ],
    [
      'Posts {} are hollow; the cavity is taken to stay as wide as found.',
      'Postes {}: huecos por dentro. Se toma que los huecos siguen del ancho con que se encontraron.',
    ],
    [
      'The posts do not rot, and the wood of rails and infill is not recorded: look at them at every visit.',
      'Los postes no se pudren, y la madera de travesaños y tablas no está anotada: mírelos en cada visita.',
    ],
    [
      'No published law gives the rot above ground of {}: look at rails and infill at every visit.',
      'Ninguna ley publicada da la pudrición sobre el suelo de {}: mire travesaños y tablas en cada visita.',
    ],
  ],
  registerNameInSpanish,
  windCurveInSpanish,
);

/** What a forecast remarks, what was found at posts, and what is due above the ground, in Spanish; as it stands where no phrase has it. */
export const remarkInSpanish = (remark: string): string => book(remark) ?? remark;
