import type { Child, FC } from 'hono/jsx';
import type { RecordPage } from '../../register/record-pages.ts';
import type { RecordOf } from '../../register/record-store.ts';
import type { PageFrame } from '../frame/page-frame.ts';
import { PageShell } from '../frame/page-shell.tsx';
import { ScrollFrame } from '../frame/scroll-frame.tsx';
import { PageLinks, SearchForm } from './list-pieces.tsx';

/** The frame of every page that lists records: its heading and what stands on it, in a sentence. */
export const ListFrame: FC<{
  readonly frame: PageFrame;
  readonly title: string;
  readonly lead: string;
  /** Where the page is in the navigation; `records`: below the page Records, to which it leads back. */
  readonly section?: 'records' | 'owners' | 'sites';
  readonly children?: Child;
}> = ({ frame, title, lead, section = 'records', children }) => (
  <PageShell title={title} section={section} frame={frame} cautions={false}>
    {section === 'records' && (
      <p class="back">
        <a href="/records">Records</a>
      </p>
    )}
    <h1>{title}</h1>
    <p class="lead">{lead}</p>
    {children}
  </PageShell>
);

/** A column of a list: what stands in it, and whether it may break anywhere. */
export interface ListColumn<R> {
  readonly heading: string;
  readonly cell: (record: R) => Child;
  readonly breaks?: true;
}

/** What the lists of owners and of sites say in their own words. */
interface NamedKind {
  readonly title: string;
  readonly one: string;
  readonly several: string;
  readonly an: string;
  readonly searched: string;
}

const NAMED: Readonly<Record<'owners' | 'sites', NamedKind>> = {
  owners: { title: 'Owners', one: 'owner', several: 'owners', an: 'an owner', searched: 'Name, ref or address' },
  sites: { title: 'Sites', one: 'site', several: 'sites', an: 'a site', searched: 'Name, ref, place or region' },
};

/** A page of the list of owners or of sites, with the field by which it is searched. */
export function NamedList<K extends 'owners' | 'sites'>({
  kind,
  frame,
  list,
  text,
  columns,
}: {
  readonly kind: K;
  readonly frame: PageFrame;
  readonly list: RecordPage<K>;
  readonly text: string;
  readonly columns: readonly ListColumn<RecordOf[K]>[];
}) {
  const { title, one, several, an, searched } = NAMED[kind];
  const path = `/${kind}`;
  const lead =
    list.total === 0
      ? `The register holds no ${several} yet.`
      : `${list.total === 1 ? `1 ${one}` : `${list.total} ${several}`} in the register.`;
  return (
    <ListFrame frame={frame} title={title} lead={lead} section={kind}>
      <p>
        <a href={`/records/${kind}/new`}>{`Add ${an}`}</a>, or <a href="/import">{`import ${kind}.csv`}</a>.
      </p>
      {list.total > 0 && <SearchForm path={path} label={searched} text={text} />}
      {list.records.length > 0 ? (
        <ScrollFrame label={title}>
          <table class="stacked">
            <caption>{`${list.found} of ${list.total}, by name`}</caption>
            <thead>
              <tr>
                <th scope="col">{title.slice(0, -1)}</th>
                {columns.map(({ heading }) => (
                  <th scope="col">{heading}</th>
                ))}
              </tr>
            </thead>
            <tbody>
              {list.records.map((record) => (
                <tr>
                  <th scope="row">
                    <a href={`${path}/${encodeURIComponent(record.ref)}`}>{record.name}</a>
                    <span class="small">{record.ref}</span>
                  </th>
                  {columns.map(({ heading, cell, breaks }) => (
                    <td data-label={heading} {...(breaks ? { class: 'hash' } : {})}>
                      {cell(record)}
                    </td>
                  ))}
                </tr>
              ))}
            </tbody>
          </table>
        </ScrollFrame>
      ) : (
        list.total > 0 && (
          <p>
            {`No ${one} answers to that. `}
            <a href={path}>Show all</a>.
          </p>
        )
      )}
      <PageLinks path={path} text={text} page={list.page} pages={list.pages} />
    </ListFrame>
  );
}
