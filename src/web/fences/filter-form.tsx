import type { FC } from 'hono/jsx';
import { TREATMENT_CLASS_KEYS } from '../../decay/treatment-class.ts';
import type { ChartLanguage } from '../../drawing/chart-words.ts';
import type { FencePage } from '../../register/fence-list.ts';
import { EVERY_FENCE, type FenceQuery, SORT_KEYS } from '../../register/fence-query.ts';
import { ANYWHERE, DANGEROUS, fenceCsvPath, narrows, STANDINGS, usesFoldedFilters } from './fence-query.ts';
import { countText } from './list-sentences.ts';
import { LIST_WORDS, type ListWords } from './list-words.ts';

interface FilterProps {
  readonly page: FencePage;
  readonly query: FenceQuery;
  readonly language: ChartLanguage;
}

interface Choice {
  readonly value: string;
  readonly text: string;
}

interface ChoiceGroup {
  readonly label: string;
  readonly choices: readonly Choice[];
}

const Options: FC<{ readonly choices: readonly Choice[]; readonly chosen: string | null }> = ({ choices, chosen }) => (
  <>
    {choices.map(({ value, text }) => (
      <option value={value} selected={value === chosen}>
        {text}
      </option>
    ))}
  </>
);

const Choose: FC<{
  readonly name: string;
  readonly label: string;
  readonly any: string | null;
  readonly chosen: string | null;
  readonly choices: readonly Choice[];
  readonly groups?: readonly ChoiceGroup[];
}> = ({ name, label, any, chosen, choices, groups = [] }) => (
  <div class="field">
    <label for={name}>{label}</label>
    <select id={name} name={name}>
      {any !== null && <option value="">{any}</option>}
      <Options choices={choices} chosen={chosen} />
      {groups.map((group) => (
        <optgroup label={group.label}>
          <Options choices={group.choices} chosen={chosen} />
        </optgroup>
      ))}
    </select>
  </div>
);

const Typed: FC<{
  readonly name: string;
  readonly label: string;
  readonly value: string | number | null;
  readonly year?: boolean;
}> = ({ name, label, value, year }) => (
  <div class={year ? 'field year' : 'field'}>
    <label for={name}>{label}</label>
    <input
      id={name}
      name={name}
      type="text"
      value={value === null ? '' : String(value)}
      inputmode={year ? 'numeric' : undefined}
      autocomplete="off"
    />
  </div>
);

const standingChoices = (words: ListWords, counts: FencePage['counts'] | null): readonly Choice[] =>
  STANDINGS.map((standing) => ({
    value: standing,
    text: counts ? `${words.standings[standing]} (${countText(counts[standing])})` : words.standings[standing],
  }));

/** The form that narrows and orders the list; what is seldom asked for is folded away. */
export const FilterForm: FC<FilterProps> = ({ page, query, language }) => {
  const words = LIST_WORDS[language];
  return (
    <search aria-label={words.title}>
      <form class="narrow filters" method="get" action="/fences">
        <div class="field wide">
          <label for="q">{words.search}</label>
          <input id="q" name="q" type="search" value={query.text} />
        </div>
        <Choose
          name="standing"
          label={words.columns.standing}
          any={words.allOfThem}
          chosen={query.dangerous ? DANGEROUS : query.anywhere === null ? query.standing : `any-${query.anywhere}`}
          choices={[{ value: DANGEROUS, text: `${words.dangerous} (${countText(page.dangerous)})` }]}
          groups={[
            {
              label: words.groups.anywhere,
              choices: ANYWHERE.map((value) => ({
                value: `any-${value}`,
                text: `${words.anywhere[value]} (${countText(page.anywhere[value])})`,
              })),
            },
            { label: words.groups.line, choices: standingChoices(words, page.counts) },
          ]}
        />
        <Choose
          name="sort"
          label={words.orderBy}
          any={null}
          chosen={query.sort}
          choices={SORT_KEYS.map((key) => ({ value: key, text: words.columns[key].toLowerCase() }))}
        />
        <button type="submit">{words.show}</button>
        <details class="more" open={usesFoldedFilters(query) || query.siteRef !== null || query.descending}>
          <summary>{words.more}</summary>
          <div class="folded">
            {page.sites === null ? (
              <Typed name="site" label={words.siteRef} value={query.siteRef} />
            ) : (
              <Choose
                name="site"
                label={words.columns.site}
                any={words.allOfThem}
                chosen={query.siteRef}
                choices={page.sites.map(({ ref, name }) => ({ value: ref, text: name }))}
              />
            )}
            <Typed name="owner" label={words.ownerRef} value={query.ownerRef} />
            <Choose
              name="ends"
              label={words.columns.ends}
              any={words.allOfThem}
              chosen={query.endsStanding}
              choices={standingChoices(words, null)}
            />
            <Choose
              name="treatment"
              label={words.columns.treatment}
              any={words.allOfThem}
              chosen={query.treatmentClass}
              choices={TREATMENT_CLASS_KEYS.map((key) => ({ value: key, text: words.treatment(key) }))}
            />
            <Typed year name="from" label={words.builtFrom} value={query.builtFrom} />
            <Typed year name="to" label={words.builtTo} value={query.builtTo} />
            <Typed year name="short-from" label={words.shortFrom} value={query.shortFrom} />
            <Typed year name="short-to" label={words.shortTo} value={query.shortTo} />
            <div class="tick">
              <input id="dir" name="dir" type="checkbox" value="desc" checked={query.descending} />
              <label for="dir">{words.turned}</label>
            </div>
          </div>
        </details>
      </form>
      <p class="list-ways">
        {page.found > 0 && (
          <a href={fenceCsvPath(query)} download="fences.csv">
            {words.csv(countText(page.found))}
          </a>
        )}
        {(narrows(query) || query.sort !== EVERY_FENCE.sort || query.descending) && <a href="/fences">{words.clear}</a>}
      </p>
    </search>
  );
};
