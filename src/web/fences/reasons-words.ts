import type { ChartLanguage } from '../../drawing/chart-words.ts';

/** The words of the page of a fence's reasons. */
export interface ReasonsWords {
  readonly title: (ref: string) => string;
  readonly fence: (ref: string) => string;
  readonly heading: (ref: string) => string;
  readonly lead: string;
  readonly seenLink: string;
  readonly between: string;
  readonly weighsLink: string;
  readonly season: string;
  readonly show: string;
  readonly showEnds: string;
  readonly showLine: string;
  readonly steps: string;
  readonly built: string;
  readonly caption: (facts: {
    readonly season: string;
    readonly group: 'line posts' | 'ends';
    readonly posts: string;
    readonly several: boolean;
    readonly age: string;
  }) => string;
  readonly columns: readonly [quantity: string, symbol: string, value: string, basis: string, equation: string];
  readonly seen: {
    readonly heading: string;
    readonly beliefs: string;
    readonly beliefsCaption: string;
    readonly beliefColumns: readonly [
      unknown: string,
      before: string,
      readings: string,
      storms: string,
      movedBy: string,
    ];
    readonly posts: string;
    readonly postsCaption: string;
    readonly postColumns: readonly [
      post: string,
      day: string,
      seen: string,
      rate: string,
      believed: string,
      how: string,
    ];
  };
  readonly weighs: {
    readonly heading: string;
    readonly caption: string;
    readonly table: string;
    readonly tableLabel: string;
    readonly columns: readonly [input: string, known: string, sooner: string, later: string];
    readonly asRecorded: string;
  };
}

const EN: ReasonsWords = {
  title: (ref) => `Reasons of fence ${ref}`,
  fence: (ref) => `Fence ${ref}`,
  heading: (ref) => `How fence ${ref} was computed`,
  lead: 'Each step with its number, its equation, where that comes from and how sure we are of it. “Expected” steps lead to the gust that would really do it, “code” steps to what a checker would compute; the two never mix. Below them:',
  seenLink: 'what was seen',
  between: 'of the fence and what it changed, and',
  weighsLink: 'what weighs most',
  season: 'Season',
  show: 'Show',
  showEnds: 'Show the posts of the ends instead',
  showLine: 'Show the line posts instead',
  steps: 'Steps of the forecast',
  built: 'As built',
  caption: ({ season, group, posts, several, age }) =>
    `${season}, ${group} (${several ? 'posts' : 'post'} ${posts}), ${age}; what is not known stands at its middle value.`,
  columns: ['Quantity', 'Symbol', 'Value', 'Basis', 'Equation and source'],
  seen: {
    heading: 'What was seen',
    beliefs: 'What is believed before and after',
    beliefsCaption:
      'What is believed before anything was seen, after the readings, and after the storms too: the middle, and below it the range that holds in 8 cases of 10. With × a factor on what the tables give.',
    beliefColumns: ['Not known', 'Before', 'After readings', 'After storms', 'Moved by'],
    posts: 'Posts that were read',
    postsCaption:
      'Rot in each face at the posts that were read, last reading each. What is believed of that day counts all readings of the fence; in brackets the range that holds in 8 cases of 10.',
    postColumns: ['Post', 'Day', 'Seen', 'Rate it implies', 'Depth believed', 'How'],
  },
  weighs: {
    heading: 'What weighs most',
    caption:
      'When the fence goes short, with one input at a time moved and all others at their middle or as recorded. The short season of the forecast weighs all that is not known together, so it can lie a season or two beside “as it stands”. The picture looks at the posts as they stand; readings are not weighed anew for a moved input.',
    table: 'The same as a table, input by input',
    tableLabel: 'What moves the short season',
    columns: ['Input', 'Known', 'Sooner', 'Later'],
    asRecorded: 'as recorded',
  },
};

const ES: ReasonsWords = {
  title: (ref) => `Razones de la cerca ${ref}`,
  fence: (ref) => `Cerca ${ref}`,
  heading: (ref) => `Cómo se calculó la cerca ${ref}`,
  lead: 'Cada paso con su número, su ecuación, de dónde viene y qué tan seguros estamos. Los pasos «esperado» llevan a la ráfaga que de verdad lo haría; los de «código», a lo que calcularía un revisor; nunca se mezclan. Debajo:',
  seenLink: 'lo que se observó',
  between: 'de la cerca y qué cambió, y',
  weighsLink: 'qué pesa más',
  season: 'Temporada',
  show: 'Ver',
  showEnds: 'Ver mejor los postes de los extremos',
  showLine: 'Ver mejor los postes de línea',
  steps: 'Pasos del pronóstico',
  built: 'Como se construyó',
  caption: ({ season, group, posts, several, age }) =>
    `${season}, ${group === 'ends' ? 'extremos' : 'postes de línea'} (${several ? 'postes' : 'poste'} ${posts}), ${age}; lo que no se sabe está en su valor medio.`,
  columns: ['Cantidad', 'Símbolo', 'Valor', 'Base', 'Ecuación y fuente'],
  seen: {
    heading: 'Lo que se observó',
    beliefs: 'Lo que se cree antes y después',
    beliefsCaption:
      'Lo que se cree antes de observar nada, después de las mediciones y después también de las tormentas: el medio, y debajo el margen que se cumple en 8 de cada 10 casos. Con ×, un factor sobre lo que dan las tablas.',
    beliefColumns: ['No se sabe', 'Antes', 'Con mediciones', 'Con tormentas', 'Lo movieron'],
    posts: 'Postes medidos',
    postsCaption:
      'Pudrición en cada cara de los postes medidos, la última medición de cada uno. Lo que se cree de ese día cuenta todas las mediciones de la cerca; entre paréntesis, el margen que se cumple en 8 de cada 10 casos.',
    postColumns: ['Poste', 'Día', 'Medido', 'Ritmo que da', 'Lo que se cree', 'Cómo'],
  },
  weighs: {
    heading: 'Qué pesa más',
    caption:
      'Cuándo la cerca deja de aguantar si se mueve un dato a la vez y los demás quedan en su medio o como constan. El pronóstico junta todo lo que no se sabe, así que puede quedar una o dos temporadas al lado de «como está». El dibujo mira los postes como están; las mediciones no se vuelven a pesar para un dato movido.',
    table: 'Lo mismo en una tabla, dato por dato',
    tableLabel: 'Qué mueve la temporada en que deja de aguantar',
    columns: ['Dato', 'Se sabe', 'Antes', 'Después'],
    asRecorded: 'como consta',
  },
};

/** The words of the page of a fence's reasons, by language. */
export const REASONS_WORDS: Readonly<Record<ChartLanguage, ReasonsWords>> = { en: EN, es: ES };
