/** One list page to be measured. */
export interface ListedPage {
  readonly name: string;
  readonly path: string;
}

/** Every list page with the ways in which it is asked for; a new list page is one line more. */
export const LISTED_PAGES: readonly ListedPage[] = [
  { name: 'fences, the worst first', path: '/fences' },
  { name: 'fences, last page', path: '/fences?page=1000000' },
  { name: 'fences, a page in the middle', path: '/fences?page=1000' },
  { name: 'fences by owner, the other way', path: '/fences?sort=owner&dir=desc' },
  { name: 'fences short, by once in N years', path: '/fences?standing=short&sort=once' },
  { name: 'fences clear, last page', path: '/fences?standing=clear&page=1000000' },
  { name: 'fences of one treatment, by site', path: '/fences?treatment=heavy-duty&sort=site' },
  { name: 'fences by age and short season', path: '/fences?from=2004&to=2012&short-to=2030&sort=installed' },
  { name: 'fences with weak ends, page 9', path: '/fences?ends=short&sort=lean&page=9' },
  { name: 'fences of one site', path: '/fences?site=SITE' },
  { name: 'fences of one owner', path: '/fences?owner=OWNER&sort=short' },
  { name: 'text found seldom', path: '/fences?q=0000123' },
  { name: 'text found often', path: '/fences?q=b-0000&sort=gust' },
  { name: 'text of a site', path: '/fences?q=SITENAME' },
  { name: 'outbox', path: '/outbox' },
  { name: 'outbox of one owner', path: '/outbox?owner=OWNER' },
  { name: 'notices', path: '/notices' },
  { name: 'visits', path: '/visits' },
  { name: 'owners', path: '/owners' },
  { name: 'sites', path: '/sites' },
  { name: 'answers', path: '/answers' },
  { name: 'season brief', path: '/brief' },
  { name: 'outbox, what was sent', path: '/outbox?state=sent' },
];
