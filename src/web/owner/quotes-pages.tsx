import type { FC } from 'hono/jsx';
import { dayInWords } from '../../notify/plain-words.ts';
import { moneyText } from '../../season/money/money.ts';
import { quantityText } from '../../season/money/quote-text.ts';
import type { OwnerQuote } from '../../service/owner-quotes.ts';
import { FormField, TokenField } from '../frame/form-field.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import { OwnerShell, Said } from './owner-shell.tsx';
import type { OwnerView } from './owner-view.ts';
import { conditionInSpanish, lineInSpanish, quantityInSpanish } from './quote-translation.ts';
import { QUOTES_WORDS, type QuotesWords } from './quotes-words.ts';
import { worksTextIn } from './works-words.ts';

const totalText = ({ quote }: OwnerQuote): string => `${moneyText(quote.total)} ${quote.currency}`;

/** The page of the quotes that an owner was offered. */
export const OwnerQuotesPage: FC<{ readonly view: OwnerView; readonly quotes: readonly OwnerQuote[] }> = ({
  view,
  quotes,
}) => {
  const { language } = view.owner;
  const words = QUOTES_WORDS[language];
  return (
    <OwnerShell view={view} title={words.title} place="quotes" cautions={false}>
      <h1>{words.title}</h1>
      <p class="lead">{quotes.length === 0 ? words.none : words.lead}</p>
      {quotes.length > 0 && (
        <ScrollFrame label={words.title}>
          <table class="stacked">
            <thead>
              <tr>
                <th scope="col">{words.number}</th>
                <th scope="col">{words.fence}</th>
                <th scope="col" class="figure">
                  {words.total}
                </th>
                <th scope="col">{words.validUntil}</th>
                <th scope="col">{words.standing}</th>
              </tr>
            </thead>
            <tbody>
              {quotes.map((each) => (
                <tr>
                  <th scope="row">
                    <a href={`${view.home}/quotes/${encodeURIComponent(each.number)}`}>{each.number}</a>
                  </th>
                  <td data-label={words.fence}>{each.quote.fenceRefs.join(', ')}</td>
                  <td data-label={words.total} class="figure">
                    {totalText(each)}
                  </td>
                  <td data-label={words.validUntil}>{dayInWords(each.quote.validUntil, language)}</td>
                  <td data-label={words.standing}>{words.standings[each.standing]}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollFrame>
      )}
    </OwnerShell>
  );
};

/** The page of one quote, on which its owner accepts it. */
export const OwnerQuotePage: FC<{
  readonly view: OwnerView;
  readonly offered: OwnerQuote;
  /** What is wrong with the name that was written; undefined where nothing. */
  readonly fault?: string | undefined;
  readonly name?: string;
}> = ({ view, offered, fault, name = '' }) => {
  const { language } = view.owner;
  const words = QUOTES_WORDS[language];
  const { quote, parts } = offered;
  return (
    <OwnerShell view={view} title={words.quote(offered.number)} place="quotes" cautions={false}>
      <p class="back">
        <a href={`${view.home}/quotes`}>{words.back}</a>
      </p>
      <h1>{words.quote(offered.number)}</h1>
      {view.said && <Said>{words[view.said]}</Said>}
      <p class="lead">
        {words.offer(quote.fenceRefs.join(', '), totalText(offered), dayInWords(quote.validUntil, language))}
      </p>
      <p class="where wide-text">{`${quote.owner}, ${quote.site}`}</p>
      <h2>{words.works}</h2>
      <ul class="plain">
        {parts.map((part) => (
          <li>{worksTextIn(part, language)}</li>
        ))}
      </ul>
      <QuoteTable offered={offered} view={view} />
      {quote.cautions.length > 0 && (
        <>
          <h2>{words.conditions}</h2>
          <ul class="plain">
            {quote.cautions.map((caution) => (
              <li>
                <Told english={caution} spanish={language === 'es' ? conditionInSpanish(caution) : null} />
              </li>
            ))}
          </ul>
        </>
      )}
      {words.asWritten && <AsWritten offered={offered} words={words.asWritten} />}
      <AcceptForm view={view} offered={offered} fault={fault} name={name} />
    </OwnerShell>
  );
};

/** A text of the quote, in Spanish where it is told so; words of the office's own as it wrote them. */
const Told: FC<{ readonly english: string; readonly spanish: string | null }> = ({ english, spanish }) =>
  spanish === null ? <span lang="en">{english}</span> : <span>{spanish}</span>;

/** The words that were offered, folded away: what is accepted is the quote as it was written. */
const AsWritten: FC<{
  readonly offered: OwnerQuote;
  readonly words: NonNullable<QuotesWords['asWritten']>;
}> = ({ offered: { quote }, words }) => (
  <details>
    <summary>{words.summary}</summary>
    <p>{words.note}</p>
    <ul class="as-written" lang="en">
      {[...quote.lines.map(({ what }) => what), ...quote.cautions].map((text) => (
        <li>{text}</li>
      ))}
    </ul>
  </details>
);

const QuoteTable: FC<{ readonly view: OwnerView; readonly offered: OwnerQuote }> = ({ view, offered }) => {
  const { language } = view.owner;
  const { quote } = offered;
  const words = QUOTES_WORDS[language];
  const sum = (label: string, amount: string) => (
    <tr class="sum">
      <th scope="row">{label}</th>
      <td />
      <td class="figure" data-label={words.amount}>
        {amount}
      </td>
    </tr>
  );
  return (
    <ScrollFrame label={words.quote(quote.number)}>
      <table class="stacked">
        <thead>
          <tr>
            <th scope="col">{words.what}</th>
            <th scope="col">{words.quantity}</th>
            <th scope="col" class="figure">
              {words.amount}
            </th>
          </tr>
        </thead>
        <tbody>
          {quote.lines.map(({ what, quantity, unit, unitPrice, amount }, index) => (
            <tr>
              <th scope="row">
                <Told english={what} spanish={language === 'es' ? lineInSpanish(offered, index) : null} />
              </th>
              <td data-label={words.quantity}>
                {`${language === 'es' ? quantityInSpanish(quantity, unit) : quantityText(quantity, unit)} × ${moneyText(unitPrice)}`}
              </td>
              <td data-label={words.amount} class="figure">
                {moneyText(amount)}
              </td>
            </tr>
          ))}
          {sum(words.subtotal, moneyText(quote.subtotal))}
          {sum(words.tax(quote.taxPercent), moneyText(quote.tax))}
          {sum(words.total, `${moneyText(quote.total)} ${quote.currency}`)}
        </tbody>
      </table>
    </ScrollFrame>
  );
};

const AcceptForm: FC<{
  readonly view: OwnerView;
  readonly offered: OwnerQuote;
  readonly fault: string | undefined;
  readonly name: string;
}> = ({ view, offered, fault, name }) => {
  const words = QUOTES_WORDS[view.owner.language];
  const { standing, accepted, number, sha256 } = offered;
  if (accepted) {
    const { name: by } = JSON.parse(accepted.detail) as { readonly name: string };
    return <p class="done wide-text">{words.acceptedBy(by, view.dayOf(accepted.at), sha256)}</p>;
  }
  if (standing !== 'open') return <p class="done">{standing === 'over' ? words.over : words.withdrawn}</p>;
  return (
    <section class="answer-box" aria-labelledby="accept">
      <h2 id="accept">{words.accept.heading}</h2>
      <form class="tall" method="post" action={`${view.home}/quotes/${encodeURIComponent(number)}`}>
        <TokenField token={view.formToken} />
        <input type="hidden" name="quote" value={sha256} />
        <p>{words.accept.text(number, totalText(offered))}</p>
        <FormField
          name="name"
          label={words.accept.name}
          hint={words.accept.nameHint}
          autocomplete="name"
          value={name}
          fault={fault}
        />
        <button type="submit">{words.accept.button}</button>
      </form>
    </section>
  );
};
