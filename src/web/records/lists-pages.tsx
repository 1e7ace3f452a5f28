import type { FC } from 'hono/jsx';
import { CATALOGUE_KINDS } from '../../register/catalogue-record.ts';
import type { ExportUnits } from '../../register/csv/csv-field.ts';
import type { RowCells } from '../../register/csv/record-cells.ts';
import type { RecordOf } from '../../register/record-store.ts';
import type { PageFrame } from '../frame/page-frame.ts';
import { ListFrame } from './list-frame.tsx';
import { RecordTable, type TableColumn } from './record-table.tsx';

const cell =
  (...columns: readonly string[]) =>
  (cells: RowCells): string =>
    columns.map((column) => cells[column] ?? '').find((text) => text !== '') ?? '';
const column = (heading: string, name: string): TableColumn => ({ heading, text: cell(name) });
const figure = (heading: string, name: string): TableColumn => ({ heading, figure: true, text: cell(name) });

interface ListProps {
  readonly frame: PageFrame;
  readonly units: ExportUnits;
}

/** The works catalogue as the office changed it, and its materials. */
export const CataloguePage: FC<
  ListProps & {
    readonly lines: readonly RecordOf['catalogue'][];
    readonly materials: readonly RecordOf['materials'][];
  }
> = ({ frame, units, lines, materials }) => {
  const own = new Set<string>(lines.map(({ kind }) => kind));
  const shipped = CATALOGUE_KINDS.filter((kind) => !own.has(kind));
  return (
    <ListFrame
      frame={frame}
      title="Works catalogue"
      lead="What each kind of works takes in hours and costs in money. Plans and quotes reckon with it."
    >
      <h2>Lines of your own</h2>
      <RecordTable
        kind="catalogue"
        records={lines}
        units={units}
        name={column('Works', 'kind')}
        columns={[
          figure('Hours, fixed', 'person_hours_fixed'),
          figure('Hours a post', 'person_hours_per_post'),
          figure('Price, fixed', 'price_fixed'),
          figure('Price a post', 'price_per_post'),
          figure('Cure days', 'cure_days'),
          figure('Notice before digging, days', 'locate_notice_days'),
        ]}
        empty="None yet: every kind of works is as it comes with the program."
      />
      {shipped.length > 0 && (
        <>
          <h2>As they come with the program</h2>
          <ul class="plain">
            {shipped.map((kind) => (
              <li>
                {`${kind}: `}
                <a href={`/records/catalogue/new?kind=${kind}`} aria-label={`Write a line of your own for ${kind}`}>
                  write a line of your own
                </a>
              </li>
            ))}
          </ul>
        </>
      )}
      <h2>Materials</h2>
      <RecordTable
        kind="materials"
        records={materials}
        units={units}
        name={{ heading: 'Material', text: (cells) => `${cells.name} for ${cells.kind}` }}
        columns={[
          column('Unit', 'unit'),
          figure('Fixed', 'quantity_fixed'),
          figure('A post', 'quantity_per_post'),
          figure('Cost of a unit', 'unit_cost'),
        ]}
        empty="No materials of your own yet."
      />
      <p>
        <a href="/records/materials/new">Add a material</a>
      </p>
    </ListFrame>
  );
};

/** Storm seasons by name. */
export const SeasonsPage: FC<ListProps & { readonly seasons: readonly RecordOf['storm-seasons'][] }> = (props) => (
  <ListFrame
    frame={props.frame}
    title="Storm seasons"
    lead="When the season of a region opens and closes. Sites name one of these, or have a season of their own."
  >
    <RecordTable
      kind="storm-seasons"
      records={props.seasons}
      units={props.units}
      name={column('Season', 'name')}
      columns={[
        column('Opens', 'opens'),
        column('Closes', 'closes'),
        figure('Share of the yearly wind', 'share'),
        column('Source', 'source'),
      ]}
      empty="None yet: every site has a season of its own."
    />
    <p>
      <a href="/records/storm-seasons/new">Add a storm season</a>
    </p>
  </ListFrame>
);

/** Climate zones. */
export const ClimateZonesPage: FC<ListProps & { readonly zones: readonly RecordOf['climate-zones'][] }> = (props) => (
  <ListFrame
    frame={props.frame}
    title="Climate zones"
    lead="Rain, warmth and dry months of a place, from which the pace of rot follows."
  >
    <RecordTable
      kind="climate-zones"
      records={props.zones}
      units={props.units}
      name={column('Zone', 'name')}
      columns={[
        {
          heading: 'Rain a year',
          figure: true,
          text: withUnit([
            ['rain_in', 'in'],
            ['rain_mm', 'mm'],
          ]),
        },
        {
          heading: 'Mean temperature',
          figure: true,
          text: withUnit([
            ['mean_temperature_f', '°F'],
            ['mean_temperature_c', '°C'],
          ]),
        },
        figure('Dry months', 'dry_months'),
        figure('Decay zone', 'decay_zone'),
        column('Irrigated', 'irrigated'),
        column('Source', 'source'),
      ]}
      empty="No climate zones yet. Sites need one: import climate-zones.csv, or add one."
    />
    <p>
      <a href="/records/climate-zones/new">Add a climate zone</a>
    </p>
  </ListFrame>
);

const withUnit =
  (columns: readonly (readonly [column: string, unit: string])[]) =>
  (cells: RowCells): string => {
    const [name, unit] = columns.find(([each]) => (cells[each] ?? '') !== '') ?? [];
    return name === undefined ? '' : `${cells[name]} ${unit}`;
  };

/** Crews with their members and days off. */
export const CrewsPage: FC<
  ListProps & {
    readonly crews: readonly RecordOf['crews'][];
    readonly members: readonly RecordOf['crew-members'][];
    readonly daysOff: readonly RecordOf['days-off'][];
  }
> = ({ frame, units, crews, members, daysOff }) => {
  const nameOf = new Map(members.map(({ ref, name }) => [ref, name]));
  return (
    <ListFrame
      frame={frame}
      title="Crews"
      lead="Who does the works, for how many hours a week, and when they are away."
    >
      <RecordTable
        kind="crews"
        records={crews}
        units={units}
        name={column('Crew', 'name')}
        columns={[
          {
            heading: 'Base',
            text: ({ base_latitude: north, base_longitude: east }) => (north ? `${north}, ${east}` : ''),
          },
          {
            heading: 'Drives',
            text: withUnit([
              ['speed_mph', 'mph'],
              ['speed_mps', 'm/s'],
            ]),
          },
          figure('Kept back for weather', 'weather_reserve'),
        ]}
        empty="No crews yet. A season plan needs at least one."
      />
      <p>
        <a href="/records/crews/new">Add a crew</a>
      </p>
      <h2 id="members">Members</h2>
      <RecordTable
        kind="crew-members"
        records={members}
        units={units}
        name={column('Member', 'name')}
        columns={[
          column('Crew', 'crew'),
          figure('Hours a week', 'hours_per_week'),
          column('Languages', 'languages'),
          column('Skills', 'skills'),
          { heading: 'From and to', text: ({ from_day: from, to_day: to }) => [from, to].filter(Boolean).join(' to ') },
        ]}
        empty="No members yet."
      />
      <p>
        <a href="/records/crew-members/new">Add a member</a>
      </p>
      <h2 id="days-off">Days off</h2>
      <RecordTable
        kind="days-off"
        records={daysOff}
        units={units}
        name={{ heading: 'Days', text: (cells) => `${cells.first_day} to ${cells.last_day}` }}
        columns={[
          column('Crew', 'crew'),
          { heading: 'Who', text: ({ member }) => (member ? (nameOf.get(member) ?? member) : 'the whole crew') },
          column('Reason', 'reason'),
        ]}
        empty="Nobody has days off."
      />
      <p>
        <a href="/records/days-off/new">Add days off</a>
      </p>
    </ListFrame>
  );
};
