import type { Child, FC } from 'hono/jsx';
import { SOIL_CLASSES } from '../../capacity/soil-class.ts';
import { fenceAgeText, lengthText } from '../../drawing/quantity-text.ts';
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

/** The facts of a fence and its site, as recorded. */
export const FenceFactsList: FC<{ readonly detail: FenceDetail }> = ({ detail }) => {
  const { fence, site, owners, swept } = detail;
  const { units } = site;
  const one = swept?.forecast.seasons.find((season) => season.season === 1);
  return (
    <dl class="facts">
      <Fact name="Design gust" small={swept?.forecast.designGust.explanation}>
        {swept ? speedText(swept.forecast.designGust.gustMps, units) : speedText(site.designGustMps, units)}
      </Fact>
      <Fact name="Where that comes from">{site.windSource}</Fact>
      <Fact name="Installed" small={one && `${fenceAgeText(one.ageYears)} in season ${one.label}`}>
        {installedText(fence)}
      </Fact>
      <Fact name="Run" small={`posts every ${lengthText(fence.postSpacingM, units)}`}>
        {lengthText(fence.runLengthM, units)} long, {lengthText(fence.heightM, units)} high
      </Fact>
      <Fact
        name="Style"
        small={fence.bottomGapM > 0 ? `${lengthText(fence.bottomGapM, units)} clear of the ground` : undefined}
      >
        {styleText(fence)}
      </Fact>
      <Fact name="Posts">{postsText(fence, units)}</Fact>
      <Fact name="Treatment">{treatmentText(fence)}</Fact>
      <Fact name="In the ground">{groundText(fence, units)}</Fact>
      <Fact name="Ends" small={`Numbered from ${fence.namedEnd}`}>
        {endText(fence.endAKind, fence.endAReturnM, units)}; {endText(fence.endBKind, fence.endBReturnM, units)}
      </Fact>
      <Fact name="Soil" small={site.soilSaturated ? 'saturated' : undefined}>
        {SOIL_CLASSES[site.soilClass].name}
      </Fact>
      <Fact name="Exposure">
        {site.exposure}
        {site.topographicFactor > 1 && `, topographic factor ${site.topographicFactor}`}
      </Fact>
      <Fact name="Trimmer">{trimmerText(fence, units)}</Fact>
      <Fact name="If it falls">{consequenceText(fence)}</Fact>
      <Fact name="Owner">{owners.join(' and ')}</Fact>
      {fence.accessNote !== '' && <Fact name="Access">{fence.accessNote}</Fact>}
      {fence.note !== '' && <Fact name="Note">{fence.note}</Fact>}
    </dl>
  );
};
