import type { Child, FC } from 'hono/jsx';
import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { fenceAgeText, lengthText } from '../../drawing/quantity-text.ts';
import { fenceReportWords } from '../../drawing/report/fence-words-in.ts';
import { soilName } from '../../drawing/report/record-names.ts';
import { windCurveInSpanish } from '../../drawing/spanish/wind-curve.ts';
import { speedText } from '../../drawing/speed-text.ts';
import type { FenceDetail } from './fence-detail.ts';
import {
  consequenceText,
  endText,
  groundText,
  installedText,
  postsText,
  styleText,
  treatmentText,
  trimmerText,
} from './record-words.ts';

const Fact: FC<{ readonly name: string; readonly small?: string | undefined; readonly children?: Child }> = ({
  name,
  small,
  children,
}) => (
  <div>
    <dt>{name}</dt>
    <dd>
      {children}
      {small && <span class="small">{small}</span>}
    </dd>
  </div>
);

/** Names of facts that the report of a fence does not have, and how its named end is told. */
const WORDS = {
  en: {
    owner: 'Owner',
    access: 'Access',
    note: 'Note',
    and: 'and',
    inSeason: 'in season',
    numberedFrom: (end: string): string => `Numbered from ${end}`,
  },
  es: {
    owner: 'Dueño',
    access: 'Acceso',
    note: 'Nota',
    and: 'y',
    inSeason: 'en la temporada',
    numberedFrom: (end: string): string => `Se cuentan desde: ${end}`,
  },
} as const;

/** The facts of a fence and its site, as recorded. */
export const FenceFactsList: FC<{ readonly detail: FenceDetail; readonly language: ChartLanguage }> = ({
  detail,
  language,
}) => {
  const { fence, site, owners, swept } = detail;
  const { units } = site;
  const told = { units, language };
  const words = fenceReportWords(language);
  const { facts: names } = words;
  const own = WORDS[language];
  const one = swept?.forecast.seasons.find((season) => season.season === 1);
  const explanation = swept?.forecast.designGust.explanation;
  const explained = explanation && language === 'es' ? windCurveInSpanish(explanation) : null;
  return (
    <dl class="facts">
      <Fact name={names.designGust} small={explained ?? explanation}>
        {swept ? speedText(swept.forecast.designGust.gustMps, units) : speedText(site.designGustMps, units)}
      </Fact>
      <Fact name={names.windSource}>{site.windSource}</Fact>
      <Fact
        name={names.installed}
        small={one && `${fenceAgeText(one.ageYears, language)} ${own.inSeason} ${one.label}`}
      >
        {installedText(fence, language)}
      </Fact>
      <Fact name={names.run} small={words.everyPost(lengthText(fence.postSpacingM, units))}>
        {words.long(lengthText(fence.runLengthM, units), lengthText(fence.heightM, units))}
      </Fact>
      <Fact
        name={names.style}
        small={fence.bottomGapM > 0 ? words.clearOfGround(lengthText(fence.bottomGapM, units)) : undefined}
      >
        {styleText(fence, language)}
      </Fact>
      <Fact name={names.posts}>{postsText(fence, told)}</Fact>
      <Fact name={names.treatment}>{treatmentText(fence, language)}</Fact>
      <Fact name={names.ground}>{groundText(fence, told)}</Fact>
      <Fact name={names.ends} small={own.numberedFrom(fence.namedEnd)}>
        {endText(fence.endAKind, fence.endAReturnM, told)}; {endText(fence.endBKind, fence.endBReturnM, told)}
      </Fact>
      <Fact name={names.soil} small={site.soilSaturated ? words.saturated : undefined}>
        {soilName(site.soilClass, language)}
      </Fact>
      <Fact name={names.exposure}>
        {site.exposure}
        {site.topographicFactor > 1 && `, ${words.topography(site.topographicFactor)}`}
      </Fact>
      <Fact name={names.trimmer}>{trimmerText(fence, told)}</Fact>
      <Fact name={names.consequence}>{consequenceText(fence, language)}</Fact>
      <Fact name={own.owner}>{owners.join(` ${own.and} `)}</Fact>
      {fence.accessNote !== '' && <Fact name={own.access}>{fence.accessNote}</Fact>}
      {fence.note !== '' && <Fact name={own.note}>{fence.note}</Fact>}
    </dl>
  );
};
