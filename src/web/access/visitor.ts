import type { Context } from 'hono';
import type { ApiToken } from '../../register/api-token-store.ts';
import type { OwnerLink } from '../../register/owner-link-store.ts';
import type { SignedIn } from '../../service/sessions.ts';
import type { OfficeWays } from '../frame/office-ways.ts';

/** Who asks. */
export type Visitor =
  | { readonly kind: 'nobody' }
  | ({ readonly kind: 'account' } & SignedIn)
  | { readonly kind: 'token'; readonly token: ApiToken }
  | { readonly kind: 'owner'; readonly link: OwnerLink };

/** What every request carries through the pages. */
export interface PageEnv {
  readonly Bindings: { readonly incoming?: { readonly socket: { readonly remoteAddress?: string } } };
  readonly Variables: {
    /** Who asks, as the authorization found. */
    visitor: Visitor;
    /** True where the question came from this machine, to pages that are for this machine only. */
    isLocal: boolean;
    /** True where the service catches its own mail and the page of caught mail exists. */
    catchesMail: boolean;
    /** How the office writes moments and money; UTC and dollars on pages that are open to anybody. */
    office: OfficeWays;
  };
}

/** A request to the pages. */
export type PageContext = Context<PageEnv>;

/** The sites whose fences the visitor sees; null for all of them. */
export const visibleSites = ({ visitor }: PageEnv['Variables']): readonly string[] | null => {
  switch (visitor.kind) {
    case 'account':
      return visitor.siteRefs;
    case 'token':
      return null;
    case 'owner':
    case 'nobody':
      // neither is let to a page that asks for sites
      return [];
  }
};

/** Name of the account that asks; empty where no account does. */
export const accountName = ({ visitor }: PageEnv['Variables']): string =>
  visitor.kind === 'account' ? visitor.account.name : '';

/** The language in which whoever is signed in reads their own pages; English for everybody else. */
export const accountLanguage = ({ visitor }: PageEnv['Variables']): 'en' | 'es' =>
  visitor.kind === 'account' ? visitor.account.language : 'en';
