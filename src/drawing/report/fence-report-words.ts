import type { UnknownInput } from '../../forecast/fence-forecast.ts';

/** Every word of a fence's report and of its evidence file. */
export interface FenceReportWords {
  readonly fenceTitle: (ref: string) => string;
  readonly fenceSubject: (ref: string, site: string) => string;
  readonly evidenceTitle: (ref: string) => string;
  readonly evidenceSubject: (ref: string, site: string) => string;
  readonly ownedBy: (owners: string) => string;
  readonly pleaseNote: string;
  readonly chartCaption: string;
  readonly chartAlt: (ref: string) => string;
  readonly found: string;
  readonly known: string;
  readonly facts: Readonly<
    Record<
      | 'designGust'
      | 'windSource'
      | 'installed'
      | 'run'
      | 'style'
      | 'posts'
      | 'treatment'
      | 'ground'
      | 'ends'
      | 'soil'
      | 'exposure'
      | 'trimmer'
      | 'consequence',
      string
    >
  >;
  readonly gustLocal: string;
  readonly gustOnce: (years: number) => string;
  readonly ageIn: (years: string, season: string) => string;
  readonly between: (from: string, to: string) => string;
  readonly long: (length: string, height: string) => string;
  readonly everyPost: (spacing: string) => string;
  readonly clearOfGround: (gap: string) => string;
  readonly solid: (share: number) => string;
  readonly round: (size: string) => string;
  readonly by: (one: string, other: string) => string;
  readonly noRot: string;
  readonly deep: (depth: string) => string;
  readonly depthUnknown: string;
  readonly footingUnknown: string;
  readonly inFooting: (footing: string, across: string | null) => string;
  readonly numberedFrom: (end: string) => string;
  readonly returnOf: (end: string, length: string) => string;
  readonly saturated: string;
  readonly topography: (factor: number) => string;
  readonly guards: readonly [fitted: string, none: string, unknown: string];
  readonly yearlyCut: (cut: string) => string;
  readonly holds: string;
  readonly holdsCaption: (season: string, day: string) => string;
  readonly holdsColumns: readonly [what: string, likely: string, range: string, once: string];
  readonly holdsRows: Readonly<Record<'snap' | 'lean' | 'endsSnap' | 'endsLean' | 'design', string>>;
  readonly years: string;
  readonly risks: (season: string, snap: string | null, short: string | null) => string;
  readonly seasons: string;
  readonly seasonsCaption: string;
  readonly seasonColumns: readonly string[];
  readonly perSeason: string;
  readonly checker: string;
  readonly checkerNote: string;
  readonly checkerCaption: string;
  readonly checkerColumns: readonly string[];
  readonly checkerWhen: (season: string | null) => string;
  readonly meets: readonly [yes: string, no: string];
  readonly unknown: string;
  readonly unknownNone: string;
  readonly unknownInputs: Readonly<Record<UnknownInput['input'], string>>;
  readonly unknownMoves: (input: string, speed: string, which: UnknownInput['moves']) => string;
  readonly inspections: string;
  readonly inspectionsCaption: string;
  readonly inspectionColumns: readonly [day: string, who: string, how: string, found: string];
  readonly noInspections: string;
  readonly nothingFound: string;
  readonly entered: (day: string) => string;
  readonly storms: string;
  readonly stormsCaption: string;
  readonly stormColumns: readonly [day: string, storm: string, did: string];
  readonly noStorms: string;
  readonly gustOf: (gust: string, spread: number) => string;
  readonly reportedBy: (who: string) => string;
  readonly works: string;
  readonly worksCaption: string;
  readonly worksColumns: readonly [day: string, works: string];
  readonly noWorks: string;
  readonly allPosts: string;
  readonly postsNamed: (numbers: string) => string;
  readonly computed: string;
  readonly computedBy: (model: string, hash: string) => string;
  readonly gustsMeant: string;
}
