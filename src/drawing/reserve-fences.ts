import type { FenceMoney } from '../season/money/fence-money.ts';
import { cents, type Money, moneyText } from '../season/money/money.ts';
import type { ChartLanguage } from './chart-words.ts';
import { percentText } from './quantity-text.ts';

/** One fence of a reserve plan, as it is shown. */
export interface ShownFence extends Omit<FenceMoney, 'planned'> {
  readonly responsible: string;
  readonly share: number;
  readonly sharedWith: string | null;
}

/** Whole units of the currency: `1,235`. */
export const wholeText = (money: number): string => moneyText(cents(Math.round(money / 100) * 100)).slice(0, -3);

const moneyOrDash = (money: Money | null): string => (money === null ? '–' : wholeText(money));

function adviceInSpanish({
  ahead,
  cheapestYear,
  isOutworn,
}: Pick<ShownFence, 'ahead' | 'cheapestYear' | 'isOutworn'>): string {
  if (isOutworn) return 'reemplazarla ya: está gastada';
  if (!ahead || cheapestYear === null) return 'antes de que sea insuficiente';
  const { advice } = ahead;
  switch (advice.kind) {
    case 'replace now':
      return 'reemplazarla ya';
    case 'in N years':
      return `reemplazarla en ${advice.years} ${advice.years === 1 ? 'año' : 'años'}, ${cheapestYear}`;
    case 'run to failure':
      return `conservarla, hasta ${cheapestYear} a más tardar`;
  }
}

/** What is best for one fence, in a few words: `replace now`, `replace in 6 years, 2033`, `keep, to 2043 at most`. */
export function adviceText(
  { ahead, cheapestYear, isOutworn }: Pick<ShownFence, 'ahead' | 'cheapestYear' | 'isOutworn'>,
  language: ChartLanguage = 'en',
): string {
  if (language === 'es') return adviceInSpanish({ ahead, cheapestYear, isOutworn });
  if (isOutworn) return 'replace now: worn out';
  if (!ahead || cheapestYear === null) return 'before it goes short';
  const { advice } = ahead;
  switch (advice.kind) {
    case 'replace now':
      return 'replace now';
    case 'in N years':
      return `replace in ${advice.years} year${advice.years === 1 ? '' : 's'}, ${cheapestYear}`;
    case 'run to failure':
      return `keep, to ${cheapestYear} at most`;
  }
}

/** Year and month in which a fence was built; the two years where only a range is known. */
function builtText({ earliest, latest }: FenceMoney['built']): string {
  const [from, to] = [earliest.slice(0, 7), latest.slice(0, 7)];
  return from === to ? from : `${from.slice(0, 4)}–${to.slice(0, 4)}`;
}

/** Who pays: `association`, or a part of it: `lot 50 %, with R. Okafor`. */
const responsibleText = ({ responsible, share, sharedWith }: ShownFence): string =>
  sharedWith === null ? responsible : `${responsible} ${Math.round(share * 100)} %, with ${sharedWith}`;

/** Headings and cells of the fences of a plan; numbers of the columns that stand right. */
export interface FenceTable {
  readonly headings: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly right: readonly number[];
}

/** The fences of a plan side by side, a row a fence; who pays is a column only where owners share. */
export function reserveFenceTable(fences: readonly ShownFence[]): FenceTable {
  const isShared = fences.some(({ sharedWith }) => sharedWith !== null);
  return {
    headings: [
      'fence',
      'built',
      'age',
      'snaps in\na year',
      'short\nin',
      'advice',
      'at\nage',
      'rebuild',
      'after\na snap',
      'a year\nlater',
      'now\ninstead',
      ...(isShared ? ['responsible'] : []),
    ],
    rows: fences.map((fence) => [
      fence.ref,
      builtText(fence.built),
      fence.ageYears.toFixed(0),
      fence.snapRisk === null ? '–' : percentText(fence.snapRisk, 'en'),
      fence.isShortNow ? 'now' : (fence.shortSeason ?? '–'),
      adviceText(fence),
      fence.cheapestAgeYears === null ? '–' : fence.cheapestAgeYears.toFixed(0),
      wholeText(fence.price),
      wholeText(fence.priceAfterFailure + fence.consequence),
      moneyOrDash(fence.waitingOneYear),
      fence.replacingNow === 0 ? '–' : moneyOrDash(fence.replacingNow),
      ...(isShared ? [responsibleText(fence)] : []),
    ]),
    right: [2, 3, 6, 7, 8, 9, 10],
  };
}
