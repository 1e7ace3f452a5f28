import type { FC } from 'hono/jsx';
import { fenceAgeText } from '../../drawing/quantity-text.ts';
import { quantityText } from '../../drawing/reason-text.ts';
import type { DisplayUnits } from '../../drawing/speed-text.ts';
import type { SeasonForecast } from '../../forecast/fence-forecast.ts';
import type { ReasonStep } from '../../forecast/reason-step.ts';
import type { Reasons } from '../../forecast/reasons.ts';
import { numberRanges } from '../frame/number-ranges.ts';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import { BeliefsSeen } from './beliefs-seen.tsx';
import { WeighsMost } from './weighs-most.tsx';

/** Properties of the page of one fence's reasons. */
export interface ReasonsPageProps {
  readonly reasons: Reasons;
  /** The seasons that can be asked for. */
  readonly seasons: readonly SeasonForecast[];
  /** Units of the site, for what was seen and what weighs most; the steps carry both. */
  readonly units: DisplayUnits;
  readonly frame: PageFrame;
}

/** The page that shows every step of a fence's forecast. */
export const ReasonsPage: FC<ReasonsPageProps> = ({ reasons, seasons, units, frame }) => {
  const { fenceRef, season, group } = reasons;
  const path = `/fences/${encodeURIComponent(fenceRef)}`;
  const groups = stepGroups(reasons.steps);
  const shown = seasons.find(({ label }) => label === season);
  const other = otherGroup(reasons, shown);
  return (
    <PageShell title={`Reasons of fence ${fenceRef}`} section="fences" frame={frame} cautions={true}>
      <p class="back">
        <a href={path}>Fence {fenceRef}</a>
      </p>
      <h1>How fence {fenceRef} was computed</h1>
      <p>
        Each step with its number, its equation, where that comes from and how sure we are of it. “Expected” steps lead
        to the gust that would really do it, “code” steps to what a checker would compute; the two never mix. Below
        them: <a href="#seen">what was seen</a> of the fence and what it changed, and{' '}
        <a href="#weighs">what weighs most</a>.
      </p>
      <form class="narrow" method="get" action={`${path}/reasons`}>
        <div class="field">
          <label for="season">Season</label>
          <select id="season" name="season">
            {seasons.map(({ label }) => (
              <option value={label} selected={label === season}>
                {label}
              </option>
            ))}
          </select>
        </div>
        {group === 'ends' && <input type="hidden" name="of" value="ends" />}
        <button type="submit">Show</button>
      </form>
      {other !== null && (
        <p>
          <a href={reasonsPath(path, season, other)}>
            {other === 'ends' ? 'Show the posts of the ends instead' : 'Show the line posts instead'}
          </a>
        </p>
      )}
      <ScrollFrame label="Steps of the forecast">
        <table class="reasons stacked">
          <caption>
            {`${season === 'new' ? 'As built' : `Season ${season}`}, ${group === 'ends' ? 'ends' : 'line posts'} (${reasons.postNumbers.length === 1 ? 'post' : 'posts'} ${numberRanges(reasons.postNumbers)}), ${fenceAgeText(shown?.ageYears ?? reasons.ageYears)}; what is not known stands at its middle value.`}
          </caption>
          <thead>
            <tr>
              <th scope="col">Quantity</th>
              <th scope="col">Symbol</th>
              <th scope="col" class="figure">
                Value
              </th>
              <th scope="col">Basis</th>
              <th scope="col">Equation and source</th>
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
                  <td data-label="Symbol">{step.symbol}</td>
                  <td data-label="Value" class="value">
                    {quantityText(step)}
                    {step.us && <span class="small">{quantityText(step.us)}</span>}
                  </td>
                  <td data-label="Basis">{step.basis}</td>
                  <td data-label="Equation and source" class="equation">
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
      <BeliefsSeen evidence={reasons.evidence} learnedVersion={reasons.learnedVersion} units={units} />
      <WeighsMost sensitivity={reasons.sensitivity} unknowns={reasons.unknowns} units={units} />
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

function stepGroups(steps: readonly ReasonStep[]): readonly (readonly [string, readonly ReasonStep[]])[] {
  const groups = new Map<string, ReasonStep[]>();
  for (const step of steps) groups.set(step.group, [...(groups.get(step.group) ?? []), step]);
  return [...groups];
}
