import type { FC } from 'hono/jsx';
import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { percentText } from '../../drawing/quantity-text.ts';
import { adviceText, wholeText } from '../../drawing/reserve-fences.ts';
import type { FenceMoney } from '../../season/money/fence-money.ts';
import { type Money, sumMoney } from '../../season/money/money.ts';
import { FENCE_PAGE_WORDS } from './fence-page-words.ts';

/** When replacing a fence is cheapest, and what waiting costs. */
export const FenceMoneyPart: FC<{
  readonly money: FenceMoney;
  readonly fenceRef: string;
  /** True where a post is recorded dangerous, of which the money knows nothing. */
  readonly isDangerous: boolean;
  readonly currency: string;
  readonly language: ChartLanguage;
}> = ({ money, fenceRef, isDangerous, currency, language }) => {
  const words = FENCE_PAGE_WORDS[language].money;
  const amount = (of: Money): string => `${wholeText(of)} ${currency}`;
  const fact = (name: string, value: string) => (
    <div>
      <dt>{name}</dt>
      <dd>{value}</dd>
    </div>
  );
  return (
    <>
      <h2 id="money">{words.heading}</h2>
      {isDangerous && (
        <p>
          <b>{words.dangerous}</b>
        </p>
      )}
      <p>{words.sentence(money)}</p>
      <dl class="facts money">
        {fact(words.advice, adviceText(money, language))}
        {fact(words.replaced, money.cheapestAgeYears === null ? '–' : words.years(money.cheapestAgeYears))}
        {fact(words.price, amount(money.price))}
        {fact(words.afterSnap, amount(sumMoney([money.priceAfterFailure, money.consequence])))}
        {fact(words.waiting, money.waitingOneYear === null ? '–' : amount(money.waitingOneYear))}
        {fact(words.snaps, money.snapRisk === null ? '–' : percentText(money.snapRisk, language))}
      </dl>
      <p>
        <a href={`/fences/${encodeURIComponent(fenceRef)}/what-if`}>{words.whatIf}</a>
      </p>
      <p class="muted">{words.note}</p>
    </>
  );
};
