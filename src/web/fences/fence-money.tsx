import type { FC } from 'hono/jsx';
import type { ChartLanguage } from '../../drawing/chart-words.ts';
import { percentText } from '../../drawing/quantity-text.ts';
import { adviceText, wholeText } from '../../drawing/reserve-fences.ts';
import { visitItemText } from '../../drawing/visit-words.ts';
import { dayInWords } from '../../notify/plain-words.ts';
import type { FenceMoney } from '../../season/money/fence-money.ts';
import { type Money, moneyFromAmount, sumMoney } from '../../season/money/money.ts';
import type { PlanBesideMoney } from '../../service/plan-beside-money.ts';
import { FENCE_PAGE_WORDS } from './fence-page-words.ts';

/** Why the season plan or a notice may say something else; null where they do not. */
function besideText(
  beside: PlanBesideMoney,
  {
    currency,
    language,
    showsPrice,
  }: { readonly currency: string; readonly language: ChartLanguage; readonly showsPrice: boolean },
): string | null {
  const words = FENCE_PAGE_WORDS[language].money.beside;
  switch (beside.kind) {
    case 'rebuilds':
      return null;
    case 'left out':
      return words.leftOut(beside.plan);
    case 'not known':
      return words.notKnown;
    case 'mends':
      return words.mends(
        visitItemText(beside, language),
        showsPrice ? `${wholeText(moneyFromAmount(beside.price))} ${currency}` : null,
        beside.day === null ? null : dayInWords(beside.day, language),
      );
  }
}

/** When replacing a fence is cheapest, and what waiting costs. */
export const FenceMoneyPart: FC<{
  readonly money: FenceMoney;
  readonly fenceRef: string;
  /** True where a post is recorded dangerous, of which the money knows nothing. */
  readonly isDangerous: boolean;
  /** What the season plan does; null where money does not say to replace the fence now. */
  readonly beside: PlanBesideMoney | null;
  /** Whether prices of works are shown. */
  readonly showsPrice: boolean;
  readonly currency: string;
  readonly language: ChartLanguage;
}> = ({ money, fenceRef, isDangerous, beside, showsPrice, currency, language }) => {
  const words = FENCE_PAGE_WORDS[language].money;
  const amount = (of: Money): string => `${wholeText(of)} ${currency}`;
  const said = beside && besideText(beside, { currency, language, showsPrice });
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
      {said !== null && <p>{said}</p>}
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
