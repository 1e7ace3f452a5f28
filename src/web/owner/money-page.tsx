import type { FC } from 'hono/jsx';
import { wholeText } from '../../drawing/reserve-fences.ts';
import { dayInWords } from '../../notify/plain-words.ts';
import { type Money, minusMoney, sumMoney } from '../../season/money/money.ts';
import type { Contribution } from '../../season/money/reserve-ledger.ts';
import type { ReserveYear } from '../../season/money/reserve-plan.ts';
import { paidInAll } from '../../season/money/set-aside.ts';
import type { OwnerMoney } from '../../service/owner-money.ts';
import type { MoneyAhead } from '../../service/owner-money-ahead.ts';
import type { WorksMeanwhile } from '../../service/works-meanwhile.ts';
import type { PageLanguage } from '../frame/page-language.ts';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import { MONEY_WORDS } from './money-words.ts';
import { OwnerShell } from './owner-shell.tsx';
import type { OwnerView } from './owner-view.ts';
import { worksTextIn } from './works-words.ts';

/** From one amount to another; one where they read the same. */
const rangeText = (from: string, to: string): string => (from === to ? from : `${from}–${to}`);

/** The page of what an owner's fences cost, year by year. */
export const OwnerMoneyPage: FC<{
  readonly view: OwnerView;
  readonly money: MoneyAhead;
  /** What visits do at fences that are due for replacement now, by the fence's ref. */
  readonly meanwhile: ReadonlyMap<string, WorksMeanwhile>;
}> = ({ view, money, meanwhile }) => {
  const { language } = view.owner;
  const words = MONEY_WORDS[language];
  return (
    <OwnerShell view={view} title={words.title} place="money" cautions={money.kind === 'planned'}>
      <h1>{words.title}</h1>
      {money.kind === 'planned' ? (
        <Planned view={view} money={money} meanwhile={meanwhile} />
      ) : (
        <p class="lead">{money.kind === 'being worked out' ? words.workedOut : words.none}</p>
      )}
    </OwnerShell>
  );
};

const Planned: FC<{
  readonly view: OwnerView;
  readonly money: OwnerMoney;
  readonly meanwhile: ReadonlyMap<string, WorksMeanwhile>;
}> = ({ view, money, meanwhile }) => {
  const { language } = view.owner;
  const { currency } = view.frame.office;
  const words = MONEY_WORDS[language];
  const { plan, fences, unseen } = money;
  const years = plan.years;
  const spending = sumMoney(years.map((year) => year.spending));
  const { expected, nineInTen } = plan.setAside;
  const text = (amount: Money): string => `${wholeText(amount)} ${currency}`;
  const way = ({ atOnce, firstYear }: Contribution) => ({
    atOnce: atOnce > 0 ? text(atOnce) : null,
    yearly: text(firstYear),
    inAll: text(paidInAll({ course: 'flat', atOnce, firstYear }, years.length)),
  });
  const span = [years[0]?.year ?? 0, years.at(-1)?.year ?? 0] as const;
  return (
    <>
      <p class="lead">{words.lead(fences.length, text(spending), ...span)}</p>
      <p>
        {words.setAside({
          expected: way(expected.flat),
          nineInTen: way(nineInTen.flat),
          lessAtOnce:
            nineInTen.flat.atOnce < expected.flat.atOnce && nineInTen.flat.firstYear > expected.flat.firstYear,
          lastYear: span[1],
        })}
      </p>
      <p>{words.label}</p>
      {unseen.length > 0 && <p>{words.unseen(unseen.map(({ ref }) => ref).join(', '))}</p>}
      <h2>{words.byYear}</h2>
      <YearTable years={years} language={language} currency={currency} />
      <p class="muted">{words.rangeNote}</p>
      <h2>{words.byFence}</h2>
      <ScrollFrame label={words.byFence}>
        <table class="stacked">
          <thead>
            <tr>
              <th scope="col">{words.fence}</th>
              <th scope="col">{words.site}</th>
              <th scope="col">{words.replace}</th>
              <th scope="col">{words.short}</th>
              <th scope="col" class="figure">
                {words.price}
              </th>
            </tr>
          </thead>
          <tbody>
            {fences.map((fence) => (
              <tr>
                <th scope="row">
                  <a href={`${view.home}/fences/${encodeURIComponent(fence.ref)}`}>{fence.ref}</a>
                </th>
                <td data-label={words.site}>
                  {fence.siteName}
                  {fence.sharedWith !== null && (
                    <span class="small">{words.shared(fence.sharedWith, Math.round(fence.share * 100))}</span>
                  )}
                </td>
                <td data-label={words.replace} class={meanwhile.has(fence.ref) ? 'whole' : undefined}>
                  {fence.isOutworn ? words.outworn : (fence.cheapestYear ?? words.whenShort)}
                  <Meanwhile works={meanwhile.get(fence.ref)} language={language} />
                </td>
                <td data-label={words.short}>{fence.isShortNow ? words.now : (fence.shortSeason ?? words.notShort)}</td>
                <td data-label={words.price} class="figure">
                  {text(fence.price)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </ScrollFrame>
      <p class="muted">{words.notes}</p>
    </>
  );
};

/** What the season plan does at a fence that is to be replaced now, and why it does. */
const Meanwhile: FC<{ readonly works: WorksMeanwhile | undefined; readonly language: PageLanguage }> = ({
  works,
  language,
}) => {
  if (!works) return null;
  const what = works.works.map((one) => worksTextIn(one, language)).join(' + ');
  return (
    <span class="small">
      {MONEY_WORDS[language].meanwhile(what, dayInWords(works.firstDay, language), works.state)}
    </span>
  );
};

const YearTable: FC<{
  readonly years: readonly ReserveYear[];
  readonly language: PageLanguage;
  readonly currency: string;
}> = ({ years, language, currency }) => {
  const words = MONEY_WORDS[language];
  return (
    <ScrollFrame label={words.byYear}>
      <table class="by-year">
        <caption>{words.inCurrency(currency)}</caption>
        <thead>
          <tr>
            <th scope="col">{words.year}</th>
            <th scope="col" class="figure rest">
              {words.repairs}
            </th>
            <th scope="col" class="figure rest">
              {words.replacing}
            </th>
            <th scope="col" class="figure">
              {words.together}
            </th>
            <th scope="col" class="figure">
              {words.range}
            </th>
          </tr>
        </thead>
        <tbody>
          {years.map(({ year, repairs, spending, spendingBand }) => (
            <tr>
              <th scope="row">{year}</th>
              <td class="figure rest">{wholeText(repairs)}</td>
              <td class="figure rest">{wholeText(minusMoney(spending, repairs))}</td>
              <td class="figure">{wholeText(spending)}</td>
              <td class="figure">{rangeText(wholeText(spendingBand.p10), wholeText(spendingBand.p90))}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </ScrollFrame>
  );
};
