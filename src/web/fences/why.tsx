import type { FC } from 'hono/jsx';
import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { type DisplayUnits, speedText } from '../../drawing/speed-text.ts';
import { unknownSentence } from '../../drawing/unknown-sentence.ts';
import { type FenceForecast, judgedGroup, seasonOne } from '../../forecast/fence-forecast.ts';
import { numberRanges } from '../frame/number-ranges.ts';

const SNAPS = {
  en: {
    bending: 'It is bending at the groundline that breaks its posts, before shear or the rails give.',
    shear:
      'It is shear at the groundline that breaks its posts: so little sound wood is left that it is cut through before it bends.',
    'rail connection': 'It is the connection of its rails that gives first, which an inspection reported weak.',
  },
  es: {
    bending: 'Sus postes se rompen por flexión a ras de suelo, antes de que cedan el corte o los travesaños.',
    shear: 'Sus postes se rompen por corte a ras de suelo: queda tan poca madera sana que se corta antes de doblarse.',
    'rail connection': 'Cede primero la unión de sus travesaños, que una inspección encontró débil.',
  },
} as const;

const LEANS = {
  en: {
    footing: 'Before it leans, the soil beside the footings gives.',
    collar: 'Before it leans, the concrete collars burst.',
  },
  es: {
    footing: 'Se inclina cuando cede el suelo junto a los cimientos.',
    collar: 'Se inclina cuando revientan los collares de concreto.',
  },
} as const;

/** Why a fence holds what it holds: what gives first, at which posts, and what that is not known weighs most. */
export const Why: FC<{
  readonly forecast: FenceForecast;
  readonly units: DisplayUnits;
  readonly language: ChartLanguage;
}> = ({ forecast, units, language }) => {
  const one = seasonOne(forecast);
  const group = judgedGroup(one);
  const path = `/fences/${encodeURIComponent(forecast.fenceRef)}/reasons#weighs`;
  const [heaviest] = forecast.unknowns.toSorted((a, b) => b.swingMps - a.swingMps);
  if (language === 'es') {
    return (
      <>
        <h2 id="why">Por qué</h2>
        <p>
          {`${SNAPS.es[group.snapState]} ${LEANS.es[group.leanState]} Deciden ${named(group.decidingPosts, 'es')} de sus ${forecast.postCount} postes.`}
          {heaviest &&
            ` De lo que no está anotado, lo que más pesa mueve su velocidad en ${speedText(heaviest.swingMps, units)}.`}{' '}
          <a href={path}>Qué pesa más de todo</a>
        </p>
      </>
    );
  }
  return (
    <>
      <h2 id="why">Why</h2>
      <p>
        {`${SNAPS.en[group.snapState]} ${LEANS.en[group.leanState]}`}
        {heaviest && ` Of what is not recorded, one thing weighs most. ${unknownSentence(heaviest, units)}`}{' '}
        <a href={path}>What weighs most of all</a>
      </p>
      <Decides forecast={forecast} />
    </>
  );
};

const named = (posts: readonly number[], language: ChartLanguage): string =>
  language === 'es'
    ? `${posts.length === 1 ? 'el poste' : 'los postes'} ${numberRanges(posts)}`
    : `${posts.length === 1 ? 'post' : 'posts'} ${numberRanges(posts)}`;

const Decides: FC<{ readonly forecast: FenceForecast }> = ({ forecast }) => {
  const one = seasonOne(forecast);
  const { linePosts, endPosts } = forecast;
  return (
    <p>
      {`Of its ${forecast.postCount} posts, numbered from the named end, ${linePosts.length === 0 ? 'none are line posts' : `${named(linePosts, 'en')} ${linePosts.length === 1 ? 'is a line post' : 'are line posts'}`}`}
      {endPosts.length > 0 &&
        `; ${named(endPosts, 'en')} ${endPosts.length === 1 ? 'stands' : 'stand'} in the end zones`}
      .{one.line && ` The line posts' snap speed is decided by ${named(one.line.decidingPosts, 'en')}.`}
      {one.ends && ` The ends' snap speed is decided by ${named(one.ends.decidingPosts, 'en')}.`}
    </p>
  );
};
