import type { FC } from 'hono/jsx';
import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { fenceAgeText } from '../../drawing/quantity-text.ts';
import { quantityText } from '../../drawing/reason-text.ts';
import { reasonStepIn, type ShownStep } from '../../drawing/spanish/reason-step-in.ts';
import type { DisplayUnits } from '../../drawing/speed-text.ts';
import type { SeasonForecast } from '../../forecast/fence-forecast.ts';
import type { Reasons } from '../../forecast/reasons.ts';
import { numberRanges } from '../frame/number-ranges.ts';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import { BeliefsSeen } from './beliefs-seen.tsx';
import { REASONS_WORDS } from './reasons-words.ts';
import { WeighsMost } from './weighs-most.tsx';

/** Properties of the page of one fence's reasons. */
export interface ReasonsPageProps {
  readonly reasons: Reasons;
  /** The seasons that can be asked for. */
  readonly seasons: readonly SeasonForecast[];
  /** Units of the site, for what was seen and what weighs most; the steps carry both. */
  readonly units: DisplayUnits;
  readonly language: ChartLanguage;
  readonly frame: PageFrame;
}

/** The page that shows every step of a fence's forecast. */
export const ReasonsPage: FC<ReasonsPageProps> = ({ reasons, seasons, units, language, frame }) => {
  const words = REASONS_WORDS[language];
  const { fenceRef, season, group } = reasons;
  const path = `/fences/${encodeURIComponent(fenceRef)}`;
  const groups = stepGroups(reasons.steps.map((step) => reasonStepIn(step, language)));
  const shown = seasons.find(({ label }) => label === season);
  const other = otherGroup(reasons, shown);
  return (
    <PageShell title={words.title(fenceRef)} section="fences" frame={frame} cautions={true} language={language}>
      <p class="back">
        <a href={path}>{words.fence(fenceRef)}</a>
      </p>
      <h1>{words.heading(fenceRef)}</h1>
      <p>
        {words.lead} <a href="#seen">{words.seenLink}</a> {words.between} <a href="#weighs">{words.weighsLink}</a>.
      </p>
      <form class="narrow" method="get" action={`${path}/reasons`}>
        <div class="field">
          <label for="season">{words.season}</label>
          <select id="season" name="season">
            {seasons.map(({ label }) => (
              <option value={label} selected={label === season}>
                {label === 'new' ? words.built : label}
              </option>
            ))}
          </select>
        </div>
        {group === 'ends' && <input type="hidden" name="of" value="ends" />}
        <button type="submit">{words.show}</button>
      </form>
      {other !== null && (
        <p>
          <a href={reasonsPath(path, season, other)}>{other === 'ends' ? words.showEnds : words.showLine}</a>
        </p>
      )}
      <ScrollFrame label={words.steps}>
        <table class="reasons stacked">
          <caption>
            {words.caption({
              season: season === 'new' ? words.built : `${words.season} ${season}`,
              group,
              posts: numberRanges(reasons.postNumbers),
              several: reasons.postNumbers.length !== 1,
              age: fenceAgeText(shown?.ageYears ?? reasons.ageYears, language),
            })}
          </caption>
          <thead>
            <tr>
              {words.columns.map((heading, index) => (
                <th scope="col" class={index === 2 ? 'figure' : undefined}>
                  {heading}
                </th>
              ))}
            </tr>
          </thead>
          {groups.map(([heading, members]) => (
            <tbody>
              <tr class="group">
                <th scope="rowgroup" colspan={5}>
                  {heading.charAt(0).toUpperCase() + heading.slice(1)}
                </th>
              </tr>
              {members.map((step) => (
                <tr>
                  <th scope="row">{step.quantity}</th>
                  <td data-label={words.columns[1]}>{step.symbol}</td>
                  <td data-label={words.columns[2]} class="value">
                    {quantityText(step)}
                    {step.us && <span class="small">{quantityText(step.us)}</span>}
                  </td>
                  <td data-label={words.columns[3]}>{step.basis}</td>
                  <td data-label={words.columns[4]} class="equation">
                    {step.equation}
                    <span class="small">
                      {step.source} ({step.tag})
                    </span>
                  </td>
                </tr>
              ))}
            </tbody>
          ))}
        </table>
      </ScrollFrame>
      <BeliefsSeen
        evidence={reasons.evidence}
        learnedVersion={reasons.learnedVersion}
        units={units}
        language={language}
      />
      <WeighsMost sensitivity={reasons.sensitivity} unknowns={reasons.unknowns} units={units} language={language} />
    </PageShell>
  );
};

const reasonsPath = (path: string, season: string, group: Reasons['group']): string =>
  `${path}/reasons?season=${encodeURIComponent(season)}${group === 'ends' ? '&of=ends' : ''}`;

/** The posts that could be explained instead in the same season; null where there are no others. */
function otherGroup({ group }: Reasons, season: SeasonForecast | undefined): Reasons['group'] | null {
  if (!season?.line || !season.ends) return null;
  return group === 'ends' ? 'line posts' : 'ends';
}

function stepGroups(steps: readonly ShownStep[]): readonly (readonly [string, readonly ShownStep[]])[] {
  const groups = new Map<string, ShownStep[]>();
  for (const step of steps) groups.set(step.group, [...(groups.get(step.group) ?? []), step]);
  return [...groups];
}
