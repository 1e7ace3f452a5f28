import { phraseBook } from './phrase-book.ts';

const book = phraseBook([
  [
    'both stop what thins the groundline, in one visit',
    'los dos frenan lo que adelgaza el poste a ras de suelo, en una visita',
  ],
  [
    'what was found broken and what was found leaning, mended in one visit',
    'lo que se encontró roto y lo que se encontró inclinado, arreglado en una visita',
  ],
  [
    'the weak posts are carried, the others are kept from following',
    'los postes débiles quedan sostenidos y los demás no siguen el mismo camino',
  ],
  [
    'the weak posts are new, the others are kept from following',
    'los postes débiles son nuevos y los demás no siguen el mismo camino',
  ],
  [
    'the weak posts are new, and no trimmer thins them again',
    'los postes débiles son nuevos y ninguna desbrozadora los vuelve a adelgazar',
  ],
  [
    'the holes are open: deeper and wider footings go in with the posts',
    'los hoyos están abiertos: con los postes entran cimientos más hondos y más anchos',
  ],
  ['a liner goes on only before a post is set', 'un forro solo se pone antes de plantar el poste'],
  [
    'the groundline is laid bare for the footing, so it is treated too',
    'para el cimiento se destapa el poste a ras de suelo, así que también se trata',
  ],
  [
    'old and new posts share the load, and the old ones stop rotting',
    'postes viejos y nuevos se reparten la carga, y los viejos dejan de pudrirse',
  ],
  [
    'new posts in the old shallow footings would lean as the old ones did',
    'postes nuevos en los viejos cimientos poco hondos se inclinarían como los de antes',
  ],
  [
    'none of these posts rots on: they do not rot, are new, are broken, or a sleeve carries them',
    'ninguno de estos postes sigue pudriéndose: no se pudren, son nuevos, están rotos o los sostiene una funda',
  ],
  [
    'a full-height liner goes on before a post is set: it comes with a post swap or a rebuild',
    'un forro de altura completa se pone antes de plantar el poste: va con un cambio de postes o una reconstrucción',
  ],
  [
    'no yearly trimmer cut is recorded at these posts, or guards have ended it',
    'en estos postes no consta ningún corte anual de desbrozadora, o los protectores ya lo terminaron',
  ],
  [
    'the footings recorded are as deep and as wide as the new ones would be, and none leans',
    'los cimientos anotados son tan hondos y anchos como serían los nuevos, y ninguno está inclinado',
  ],
  ['none of these posts rots and none is broken', 'ninguno de estos postes se pudre y ninguno está roto'],
  [
    'these posts are not wood, are new, have a sleeve, or hold more when sound than the sleeve of the catalogue',
    'estos postes no son de madera, son nuevos, ya tienen funda, o sanos aguantan más que la funda del catálogo',
  ],
  ['the soil of the site is not recorded as saturated', 'el suelo del sitio no está anotado como saturado'],
  [
    'in clay the water changes nothing that this model counts',
    'en arcilla el agua no cambia nada de lo que cuenta este modelo',
  ],
  ['no bay is as long as {} m', 'ningún vano llega a {} m de largo'],
  ['the fence is not built on {}', 'la cerca no está construida el {}'],
  ['no post is chosen', 'no se eligió ningún poste'],
  [
    'a rebuild sets every post anew, so there is none left to swap',
    'una reconstrucción pone nuevos todos los postes, así que no queda ninguno por cambiar',
  ],
]);

/** Why works belong together, or make no sense at a fence, in Spanish; as it stands where no phrase has it. */
export const worksReasonInSpanish = (reason: string): string => book(reason) ?? reason;
