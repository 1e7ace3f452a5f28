import { beforeAll, describe, expect, test } from 'vitest';
import type { Register } from '../../../src/register/database.ts';
import { openRegister } from '../../../src/register/database.ts';
import { faultLines, importFiles, rowCsv, SOUND_FILES } from '../made-up-register.ts';

type Cells = Readonly<Record<string, string>>;

const OWNER: Cells = { ref: 'n', name: 'Nell', kind: 'person', channel: 'mail', email: 'n@example.org' };
const ZONE: Cells = {
  ref: 'n',
  name: 'North',
  rain_mm: '900',
  mean_temperature_c: '8',
  dry_months: '0',
  source: 'invented',
};
const SITE: Cells = {
  ref: 'n',
  name: 'North',
  place: 'Northam',
  time_zone: 'America/Chicago',
  climate_zone: 'gulf',
  exposure: 'B',
  soil_class: 'firm-clay',
  wind_kind: 'map',
  wind_basis: 'ultimate',
  design_gust_mph: '105',
  return_period_years: '300',
  wind_source: 'invented',
};
const FENCE: Cells = {
  ref: 'n',
  site: 'quill',
  owner: 'oda',
  style: 'solid-board',
  height_ft: '6',
  run_length_ft: '80',
  post_spacing_ft: '8',
  named_end: 'house',
  section: '4x4',
  species: 'southern-pine',
  treatment_class: 'ground-contact',
  installed: '2014',
};
const POST: Cells = { fence: 'F-1', post: '2' };
const WORKS: Cells = { ref: 'n', fence: 'F-1', day: '2020-01-01', kind: 'liner' };
const SWAP: Cells = {
  ...WORKS,
  kind: 'post-swap',
  section: '4x4',
  species: 'southern-pine',
  treatment_class: 'heavy-duty',
};

let register: Register;
beforeAll(async () => {
  register = await openRegister(':memory:');
  await importFiles(register, SOUND_FILES);
  return () => register.close();
});

const refusals: readonly (readonly [name: string, file: string, row: Cells, said: string])[] = [
  [
    'an owner by mail without an address',
    'owners',
    { ...OWNER, email: '' },
    'line 2, email: an owner reached by mail needs a mail address; give one, or set channel to letter',
  ],
  [
    'an owner by letter without an address',
    'owners',
    { ...OWNER, channel: 'letter' },
    'line 2, postal_address: an owner reached by letter needs a postal address; give one, or set channel to mail',
  ],
  [
    'what is no mail address',
    'owners',
    { ...OWNER, email: 'nell at home' },
    'line 2, email "nell at home": not a mail address; write one as name@example.org',
  ],
  [
    'an unknown language',
    'owners',
    { ...OWNER, language: 'fr' },
    'line 2, language "fr": not one of the words it can be; write one of en, es',
  ],
  [
    'an error of a spreadsheet',
    'owners',
    { ...OWNER, name: '#REF!' },
    'line 2, name "#REF!": an error of a spreadsheet formula; put the value itself there',
  ],
  [
    'a control character',
    'owners',
    { ...OWNER, name: 'Ne\u0007ll' },
    'line 2, name "Ne\\u0007ll": it holds a character that cannot be shown or was lost in a conversion; type it again',
  ],
  [
    'a climate half measured',
    'climate-zones',
    { ...ZONE, rain_mm: '' },
    'line 2, rain_mm: a climate needs rain, mean temperature and dry months together, or only a decay zone 1 to 5',
  ],
  [
    'a climate measured beside a decay zone',
    'climate-zones',
    { ...ZONE, mean_temperature_c: '', dry_months: '', decay_zone: '3' },
    'line 2, rain_mm "900": given beside a decay zone; keep the measured means or the decay zone, not both',
  ],
  [
    'a decay zone that there is not',
    'climate-zones',
    { ref: 'n', name: 'N', decay_zone: '6', source: 's' },
    'line 2, decay_zone "6": outside the allowed 1 to 5; correct it',
  ],
  [
    'an irrigated decay zone',
    'climate-zones',
    { ref: 'n', name: 'N', decay_zone: '2', irrigated: 'yes', source: 's' },
    'line 2, irrigated "yes": a decay zone has no rain to raise; enter the next decay zone instead',
  ],
  [
    'half a dry month',
    'climate-zones',
    { ...ZONE, dry_months: '1.5' },
    'line 2, dry_months "1.5": not a whole number; write one without decimals',
  ],
  [
    'a decimal comma',
    'climate-zones',
    { ...ZONE, mean_temperature_c: '8,25' },
    'line 2, mean_temperature_c "8,25": a decimal comma; write a point, as 8.25',
  ],
  [
    'a number in powers of ten',
    'climate-zones',
    { ...ZONE, rain_mm: '1.2E+03' },
    'line 2, rain_mm "1.2E+03": written in powers of ten, as spreadsheets do; write the digits, as 1200',
  ],
  [
    'a word for a number',
    'climate-zones',
    { ...ZONE, rain_mm: 'plenty' },
    'line 2, rain_mm "plenty": not a number; write digits with a decimal point, as 5.5',
  ],
  [
    'a temperature in the wrong unit',
    'climate-zones',
    { ...ZONE, mean_temperature_c: '67' },
    `line 2, mean_temperature_c "67": outside the allowed -20 to 35 degrees C; check the number and the unit in the column's name`,
  ],
  ['a climate zone without a source', 'climate-zones', { ...ZONE, source: '' }, 'line 2, source: missing; fill it in'],
  [
    'a site of an unknown climate zone',
    'sites',
    { ...SITE, climate_zone: 'nowhere' },
    'line 2, climate_zone "nowhere": no climate zone of that ref, neither in the register nor among the rows taken; enter the climate zone first, or in the same import',
  ],
  [
    'an offset for a time zone',
    'sites',
    { ...SITE, time_zone: '-06:00' },
    'line 2, time_zone "-06:00": not a time zone of the IANA database; write one as America/Chicago',
  ],
  [
    'a ten-minute mean',
    'sites',
    { ...SITE, wind_basis: '10-minute mean' },
    'line 2, wind_basis "10-minute mean": a mean speed is no gust and no wind standard that uses one is built in; take the 3-second gust from the map and write one of ultimate, nominal, asd, fastest-mile',
  ],
  [
    'an hourly wind',
    'sites',
    { ...SITE, wind_basis: 'hourly' },
    'line 2, wind_basis "hourly": a mean speed is no gust and no wind standard that uses one is built in; take the 3-second gust from the map and write one of ultimate, nominal, asd, fastest-mile',
  ],
  [
    'an ultimate speed without a return period',
    'sites',
    { ...SITE, return_period_years: '' },
    'line 2, return_period_years: missing; give the return period of the map it was read off (300, 700 or 1700 on most maps)',
  ],
  [
    'an ASD speed without a return period',
    'sites',
    { ...SITE, wind_basis: 'asd', return_period_years: '' },
    'line 2, return_period_years: missing; give the return period of the ultimate speed it was derived from (300, 700 or 1700 on most maps)',
  ],
  [
    'a nominal speed of 300 years',
    'sites',
    { ...SITE, wind_basis: 'nominal' },
    'line 2, return_period_years "300": a nominal map speed has a return period of 50 years; write 50 or leave it empty',
  ],
  [
    'a fastest mile of 100 years',
    'sites',
    { ...SITE, wind_basis: 'fastest-mile', return_period_years: '100' },
    'line 2, return_period_years "100": a fastest-mile map speed has a return period of 50 years; write 50 or leave it empty',
  ],
  [
    'a local rule with a return period',
    'sites',
    { ...SITE, wind_kind: 'local-rule' },
    'line 2, return_period_years "300": a local fence rule is used as it stands; leave the return period empty',
  ],
  [
    'half a second point',
    'sites',
    { ...SITE, second_gust_mph: '130' },
    'line 2, second_return_period_years: missing; a second point needs its speed and its return period',
  ],
  [
    'a second return period alone',
    'sites',
    { ...SITE, second_return_period_years: '700' },
    'line 2, second_gust_mph: missing; a second point needs its speed and its return period',
  ],
  [
    'a second point of the same return period',
    'sites',
    { ...SITE, second_gust_mph: '130', second_return_period_years: '300' },
    'line 2, second_return_period_years "300": the same as the first return period; give another point of the curve',
  ],
  [
    'a rarer gust that is slower',
    'sites',
    { ...SITE, second_gust_mph: '95', second_return_period_years: '700' },
    'line 2, second_gust_mph "95": the rarer gust must be the faster one; check both speeds and both return periods',
  ],
  [
    'a design wind without its source',
    'sites',
    { ...SITE, wind_source: '' },
    'line 2, wind_source: missing; fill it in',
  ],
  [
    'a season that a spreadsheet rewrote',
    'sites',
    { ...SITE, season_opens: '1-Jun', season_closes: '11-30', season_share: '0.9' },
    'line 2, season_opens "1-Jun": not a month and day of every year; write MM-DD, as 06-01, and format the column as text in a spreadsheet',
  ],
  [
    'a season without an end',
    'sites',
    { ...SITE, season_opens: '06-01', season_closes: '', season_share: '0.9' },
    'line 2, season_closes: missing; a season has a first and a last day',
  ],
  [
    'a season without a beginning',
    'sites',
    { ...SITE, season_opens: '', season_closes: '11-30', season_share: '0.9' },
    'line 2, season_opens: missing; a season has a first and a last day',
  ],
  [
    'a season without a share',
    'sites',
    { ...SITE, season_opens: '06-01', season_closes: '11-30' },
    'line 2, season_share: missing; a season has a share of the yearly wind, as 0.8',
  ],
  [
    'half of a year-round season',
    'sites',
    { ...SITE, season_opens: '01-01', season_closes: '12-31', season_share: '0.5' },
    'line 2, season_share "0.5": a season that lasts all year has all of the yearly wind; write 1',
  ],
  [
    'a season of one day',
    'sites',
    { ...SITE, season_opens: '06-01', season_closes: '06-01', season_share: '0.5' },
    'line 2, season_closes "06-01": a season of one day; close it after the day it opens',
  ],
  [
    'an unknown owner',
    'fences',
    { ...FENCE, owner: 'odo' },
    'line 2, owner "odo": no owner of that ref, neither in the register nor among the rows taken; did you mean oda?',
  ],
  [
    'the same owner twice',
    'fences',
    { ...FENCE, second_owner: 'oda' },
    'line 2, second_owner "oda": the same as the first owner; leave it empty or name the other owner',
  ],
  [
    'a solid fence with gaps',
    'fences',
    { ...FENCE, style: 'shadowbox', solidity: '0.8' },
    'line 2, solidity "0.8": a shadowbox fence counts as solid; write 1 or leave it empty',
  ],
  [
    'a gap of more than half the height',
    'fences',
    { ...FENCE, bottom_gap_in: '38' },
    'line 2, bottom_gap_in "38": more than half the height; give the gap between ground and boards',
  ],
  [
    'posts further apart than the run is long',
    'fences',
    { ...FENCE, run_length_ft: '6' },
    'line 2, post_spacing_ft "8": longer than the run; give the distance from post to post',
  ],
  [
    'a return without a length',
    'fences',
    { ...FENCE, end_b: 'return' },
    'line 2, end_b_return_ft: missing; a return needs its length, or write unknown as the kind of end',
  ],
  [
    'a length at a free end',
    'fences',
    { ...FENCE, end_a: 'free', end_a_return_m: '3' },
    'line 2, end_a_return_m "3": a length for an end of kind free; leave it empty, or write return as the kind of end',
  ],
  [
    'a footing diameter without a footing',
    'fences',
    { ...FENCE, footing_diameter_in: '9' },
    'line 2, footing: missing beside a footing diameter; write concrete, soil or gravel, or leave the diameter empty',
  ],
  [
    'a hole narrower than the post',
    'fences',
    { ...FENCE, footing: 'soil', footing_diameter_in: '3.4' },
    'line 2, footing_diameter_in "3.4": not wider than the post; give the diameter of the hole',
  ],
  [
    'a class of round posts on a sawn one',
    'fences',
    { ...FENCE, treatment_class: 'round-pine-cca' },
    'line 2, treatment_class "round-pine-cca": round-pine-cca is a class of round posts and the section is sawn; correct one of them',
  ],
  [
    'steel without a moment',
    'fences',
    { ...FENCE, treatment_class: 'does-not-rot' },
    'line 2, moment_capacity_lbft: missing; a post that does not rot needs the bending moment it carries',
  ],
  [
    'a moment for a wooden post',
    'fences',
    { ...FENCE, moment_capacity_lbft: '3000' },
    'line 2, moment_capacity_lbft "3000": a ground-contact post is wood and its moment follows from its section; leave it empty',
  ],
  [
    'an incised class that is not',
    'fences',
    { ...FENCE, species: 'hem-fir', treatment_class: 'refractory-incised', incised: 'no' },
    'line 2, incised "no": refractory-incised says that the wood is incised; write yes, or choose refractory-unincised',
  ],
  [
    'an unincised class that is',
    'fences',
    { ...FENCE, species: 'hem-fir', treatment_class: 'refractory-unincised', incised: 'yes' },
    'line 2, incised "yes": refractory-unincised says that the wood is not incised; write no, or choose refractory-incised',
  ],
  [
    'trimmer cuts behind guards',
    'fences',
    { ...FENCE, trimmer_guards: 'yes', yearly_trimmer_cut_mm: '1' },
    'line 2, yearly_trimmer_cut_mm "1": guards are fitted, so nothing is cut each year; write 0 or set trimmer_guards to no',
  ],
  [
    'a range that runs backwards',
    'fences',
    { ...FENCE, installed: '2012/2008' },
    'line 2, installed "2012/2008": the range ends before it begins; write the earlier date first',
  ],
  [
    'a thirteenth month',
    'fences',
    { ...FENCE, installed: '2012-13' },
    'line 2, installed "2012-13": not a date; write 2014-05-03, 2014-05, 2014 or a range as 2008/2012',
  ],
  [
    'a month that a spreadsheet rewrote',
    'fences',
    { ...FENCE, installed: 'May-14' },
    'line 2, installed "May-14": not a date; looks rewritten by a spreadsheet, format the column as text and write 2014-05-03, 2014-05, 2014 or a range as 2008/2012',
  ],
  [
    'a range into the future',
    'fences',
    { ...FENCE, installed: '2020/2027' },
    'line 2, installed "2020/2027": in the future (today is 2026-11-25); enter a fence once it stands',
  ],
  [
    'a section beyond all posts',
    'fences',
    { ...FENCE, section: 'round 30 in' },
    'line 2, section "round 30 in": outside the allowed 38 to 400 mm a side; give the dressed size of the post',
  ],
  [
    'a fence that its works no longer fit',
    'fences',
    { ...FENCE, ref: 'F-1', run_length_ft: '16' },
    'line 2, run_length_ft "16": does not fit works W-2 in the register: fence F-1 had posts 1 to 3 on that day; correct the numbers',
  ],
  [
    'a post of an unknown fence',
    'posts',
    { ...POST, fence: 'F-9', section: '6x6' },
    'line 2, fence "F-9": no fence of that ref, neither in the register nor among the rows taken; did you mean F-1?',
  ],
  [
    'a post that says nothing',
    'posts',
    { ...POST, section: '' },
    'line 2, post "2": nothing on this row differs from the fence; fill in what does, or leave the row out',
  ],
  [
    'a post beyond the last',
    'posts',
    { ...POST, post: '12', section: '6x6' },
    'line 2, post "12": fence F-1 has posts 1 to 11; correct the number, or record added posts as works',
  ],
  [
    'a post beyond the end',
    'posts',
    { ...POST, position_ft: '81' },
    'line 2, position_ft "81": beyond the run of fence F-1, which is 24.384 m long; correct it',
  ],
  [
    'a post older than its fence',
    'posts',
    { ...POST, installed: '2013' },
    'line 2, installed "2013": before fence F-1 was installed (2014-05-03 at the earliest); correct one of them',
  ],
  [
    'a post whose class contradicts the fence',
    'posts',
    { ...POST, treatment_class: 'black-locust' },
    'line 2, treatment_class "black-locust": black-locust does not go with southern-pine; correct one of them (it goes with black-locust or unknown)',
  ],
  [
    'a corner without its end',
    'posts',
    { ...POST, post: '1', shared_with: 'F-2' },
    'line 2, shared_end: missing; a shared corner names the other fence and which of its ends, A or B, meets here',
  ],
  [
    'a corner with itself',
    'posts',
    { ...POST, post: '1', shared_with: 'F-1', shared_end: 'B' },
    'line 2, shared_with "F-1": a fence cannot share a corner with itself; name the other fence',
  ],
  [
    'a corner with an unknown fence',
    'posts',
    { ...POST, post: '1', shared_with: 'G-7-long-gone', shared_end: 'B' },
    'line 2, shared_with "G-7-long-gone": no fence of that ref, neither in the register nor among the rows taken; enter the fence first, or in the same import',
  ],
  [
    'a corner in the middle',
    'posts',
    { ...POST, post: '4', shared_with: 'F-2', shared_end: 'A' },
    'line 2, shared_with "F-2": a corner is at an end; only post 1 or 11 of fence F-1 can share one',
  ],
  [
    'a corner at a gate',
    'posts',
    { ...POST, post: '11', shared_with: 'F-2', shared_end: 'A' },
    'line 2, shared_with "F-2": this end of fence F-1 is recorded as gate, not as a return; correct one of them',
  ],
  [
    'a corner at the free end of the other',
    'posts',
    { ...POST, post: '1', shared_with: 'F-2', shared_end: 'B' },
    'line 2, shared_end "B": end B of fence F-2 is recorded as free, not as a return; correct one of them',
  ],
  [
    'works on an unknown fence',
    'works',
    { ...WORKS, fence: 'X' },
    'line 2, fence "X": no fence of that ref, neither in the register nor among the rows taken; enter the fence first, or in the same import',
  ],
  [
    'works without a day',
    'works',
    { ...WORKS, day: '2020' },
    'line 2, day "2020": not a date; write YYYY-MM-DD, as 2014-05-03',
  ],
  [
    'works to come',
    'works',
    { ...WORKS, day: '2026-11-26' },
    'line 2, day "2026-11-26": in the future (today is 2026-11-25); enter works once they are done',
  ],
  [
    'works before the fence',
    'works',
    { ...WORKS, day: '2014-05-02' },
    'line 2, day "2014-05-02": before fence F-1 was installed (2014-05-03 at the earliest); correct one of them',
  ],
  [
    'works at a post that is not',
    'works',
    { ...WORKS, posts: '11 12' },
    'line 2, posts "11 12": fence F-1 had posts 1 to 11 on that day; correct the numbers',
  ],
  [
    'posts with commas',
    'works',
    { ...WORKS, posts: '1, 2' },
    'line 2, posts "1, 2": not a list of posts (1,); write all, or post numbers parted by blanks, as 3 7 8 or 2-5 8',
  ],
  [
    'a post named twice',
    'works',
    { ...WORKS, posts: '2 3 2' },
    'line 2, posts "2 3 2": a post is named twice; name each once',
  ],
  [
    'a rebuild of one post',
    'works',
    { ...SWAP, kind: 'rebuild', posts: '3' },
    'line 2, posts "3": works of kind rebuild are done to the whole fence; write all',
  ],
  [
    'a footing reset without a depth',
    'works',
    { ...WORKS, kind: 'footing-reset', footing: 'concrete' },
    'line 2, embedment_in: missing; works of kind footing-reset need it',
  ],
  [
    'a liner with a footing',
    'works',
    { ...WORKS, footing: 'concrete' },
    'line 2, footing "concrete": works of kind liner have no use for it; leave it empty',
  ],
  [
    'a swap to wood that contradicts itself',
    'works',
    { ...SWAP, treatment_class: 'untreated-douglas-fir' },
    'line 2, treatment_class "untreated-douglas-fir": untreated-douglas-fir does not go with southern-pine; correct one of them (it goes with douglas-fir or unknown)',
  ],
  [
    'added posts off the run',
    'works',
    { ...SWAP, kind: 'added-posts', positions_ft: '12 92' },
    'line 2, positions_ft "12 92": beyond the run of fence F-1, which is 24.384 m long; correct it',
  ],
  [
    'positions that are none',
    'works',
    { ...SWAP, kind: 'added-posts', positions_ft: '12 in the middle' },
    'line 2, positions_ft "12 in the middle": not a list of positions; write numbers parted by blanks, as 4 12 20',
  ],
  [
    'positions given twice',
    'works',
    { ...SWAP, kind: 'added-posts', positions_ft: '12', positions_m: '4' },
    'line 2, positions_m "4": given twice, also as positions_ft; fill in one of them',
  ],
];

describe('a row is refused with its place, its value, the reason and the way out', () => {
  test.each(refusals)('%s', async (_name, kind, row, said) => {
    const report = await importFiles(register, [{ name: `${kind}.csv`, text: rowCsv(row) }]);
    expect(faultLines(report)).toEqual([`${kind}.csv ${said}`]);
    expect(report.applied).toBe(false);
  });

  test('a fence that its posts and works no longer fit', async () => {
    const row = { ...FENCE, ref: 'F-1', run_length_ft: '12', post_spacing_ft: '12' };
    const report = await importFiles(register, [{ name: 'fences.csv', text: rowCsv(row) }]);
    expect(faultLines(report)).toEqual([
      'fences.csv line 2, run_length_ft "12": does not fit post 3 in the register: fence F-1 has posts 1 to 2; correct the number, or record added posts as works',
      'fences.csv line 2, run_length_ft "12": does not fit works W-2 in the register: fence F-1 had posts 1 to 2 on that day; correct the numbers',
    ]);
  });

  test('the plain rows that these faults were put into are taken', async () => {
    const sound = { owners: OWNER, 'climate-zones': ZONE, sites: SITE, fences: FENCE, works: SWAP };
    for (const [kind, row] of Object.entries(sound)) {
      const report = await importFiles(register, [{ name: `${kind}.csv`, text: rowCsv(row) }], { dryRun: true });
      expect(faultLines(report)).toEqual([]);
    }
  });
});

describe('a file is refused as a whole', () => {
  const fault = async (text: string, name = 'owners.csv'): Promise<readonly string[]> =>
    faultLines(await importFiles(register, [{ name, text }], { acceptValid: true, dryRun: true }));

  test('where it is empty', async () => {
    expect(await fault('\n\n')).toEqual(['owners.csv line 1: the file is empty; begin with a line of column names']);
  });

  test('where its kind cannot be told', async () => {
    expect(await fault('a,b\n1,2\n', 'stuff.csv')).toEqual([
      'stuff.csv line 1: neither its columns nor its name tell what it holds; name the file after one of owners, climate-zones, storm-seasons, sites, fences, posts, works, inspections, readings, outcomes, catalogue, materials, crews, crew-members, days-off',
    ]);
  });

  test('where a column is unknown, there twice, nameless or missing', async () => {
    expect(await fault('ref,name,nmae,kind,kind,,channle\na,b,c,person,person,,mail\n')).toEqual([
      'owners.csv line 1, nmae: owners have no such column; did you mean name?',
      'owners.csv line 1, kind: the column is there twice; keep one',
      'owners.csv line 1: a column without a name; name it or remove it',
      'owners.csv line 1, channle: owners have no such column; did you mean channel?',
      'owners.csv line 1, channel: owners need the column; add channel',
    ]);
  });

  test('where a unit is unknown', async () => {
    const { height_ft, ...rest } = FENCE;
    expect(await fault(rowCsv({ ...rest, height_cm: height_ft ?? '' }), 'fences.csv')).toEqual([
      'fences.csv line 1, height_cm: fences have no such column; did you mean height_m?',
      'fences.csv line 1, height_in: fences need the column; add one of height_in, height_ft, height_m, height_mm',
    ]);
  });

  test('where quotation marks do not match', async () => {
    expect(await fault('ref,name,kind,channel\na,"Nell,person,mail\nb,B,person,mail\n')).toEqual([
      'owners.csv line 2: a quotation mark that is never closed; close it, or double it where it belongs to the text',
    ]);
    expect(await fault('ref,name,kind,channel\na,Nell "N" Fox,person,mail\n')).toEqual([
      'owners.csv line 2: a quotation mark inside a cell; put the whole cell in quotation marks and double those inside',
    ]);
    expect(await fault('ref,name,kind,channel\na,"Nell" Fox,person,mail\n')).toEqual([
      'owners.csv line 2: text after a closing quotation mark; double the quotation marks that belong to the text',
    ]);
  });

  test('where it is given twice', async () => {
    const file = { name: 'owners.csv', text: rowCsv(OWNER) };
    expect(faultLines(await importFiles(register, [file, file]))).toEqual([
      'owners.csv line 1: a file of this name is given twice; give it once, or rename one',
    ]);
  });
});

describe('rows that repeat or overflow', () => {
  test('a ref that is already in the files is refused, naming the first', async () => {
    const header = Object.keys(OWNER).join(',');
    const first = `${header}\nx,"A\nB",person,mail,x@example.org\n`;
    const second = `${header}\ny,Y,person,mail,y@example.org\nx,X,person,mail,x@example.org\n`;
    const report = await importFiles(register, [
      { name: 'a-owners.csv', text: first },
      { name: 'b-owners.csv', text: second },
    ]);
    expect(faultLines(report)).toEqual([
      'b-owners.csv line 3, ref "x": the ref is already on line 2 of a-owners.csv; keep one of the rows',
    ]);
  });

  test('a post that is already in the file is refused', async () => {
    const text = 'fence,post,section\nF-1,2,6x6\nF-1,02,4x4\n';
    expect(faultLines(await importFiles(register, [{ name: 'posts.csv', text }]))).toEqual([
      'posts.csv line 3, post "02": the post is already on line 2 of posts.csv; keep one of the rows',
    ]);
  });

  test('a row with more cells than the header is refused', async () => {
    const text = 'ref,name,kind,channel,email\nx,Fox, Nell,person,mail,x@example.org\n';
    expect(faultLines(await importFiles(register, [{ name: 'owners.csv', text }]))).toEqual([
      'owners.csv line 2: more cells than the header has columns; a text with a comma in it needs quotation marks around it',
    ]);
  });
});

describe('what is doubtful is taken with a warning', () => {
  test('pine classes on wood that takes preservative badly, and a hurricane site without a second gust', async () => {
    const report = await importFiles(
      register,
      [
        { name: 'fences.csv', text: rowCsv({ ...FENCE, species: 'hem-fir' }) },
        { name: 'sites.csv', text: rowCsv({ ...SITE, hurricane: 'yes' }) },
      ],
      { dryRun: true },
    );
    expect(report.faults).toEqual([]);
    expect(report.warnings.map(({ column, reason }) => `${column}: ${reason}`)).toEqual([
      'treatment_class: ground-contact is measured on southern pine and hem-fir takes preservative badly; refractory-unincised is more honest',
      'hurricane: one gust fixes no curve in a hurricane region; enter a second gust with its return period to see risks',
    ]);
  });
});
