import BetterSqlite3 from 'better-sqlite3';
import { expect, it } from 'vitest';
import { readRecord } from '../../../src/register/record-store.ts';
import { importFiles, soundRegister } from '../made-up-register.ts';

const RENAMED = [{ name: 'owners.csv', text: 'ref,name,kind,channel\noda,Oda Renamed,person,mail\n' }];
const CREWS = [{ name: 'crews.csv', text: 'ref,name,speed_mph\nC1,North crew,40\n' }];

/** Another program at the register while rows are judged: what it does must not need the functions of the lists. */
const elsewhere = (path: string, statement: string): void => {
  const other = new BetterSqlite3(path);
  other.exec(statement);
  other.close();
};

it('judges rows once where nothing changed before they are written', async () => {
  const register = await soundRegister();
  let judged = 0;
  const report = await importFiles(register, RENAMED, {
    onProgress: () => {
      judged += 1;
    },
  });
  expect(report.applied).toBe(true);
  expect(judged).toBe(1);
});

it('judges rows again where a record changed while they were judged', async () => {
  const register = await soundRegister();
  let judged = 0;
  const report = await importFiles(register, RENAMED, {
    onProgress: () => {
      judged += 1;
      if (judged === 1) elsewhere(register.path, "update owners set email = 'new@example.org' where ref = 'oda'");
    },
  });
  expect(judged).toBe(2);
  expect(report.replaced.owners).toMatchObject([{ ref: 'oda', email: 'new@example.org' }]);
  expect(await readRecord(register.db, 'owners', 'oda')).toMatchObject({
    name: 'Oda Renamed',
    email: 'new@example.org',
  });
});

it('always judges again what no forecast depends on, since nobody counts its changes', async () => {
  const register = await soundRegister();
  let judged = 0;
  await importFiles(register, CREWS, {
    onProgress: () => {
      judged += 1;
      if (judged === 1)
        elsewhere(
          register.path,
          "insert into crews (ref, name, speed_mps, weather_reserve, created_at, updated_at) values ('C1', 'Made meanwhile', 15, 0.1, '', '')",
        );
    },
  });
  expect(judged).toBe(2);
  expect(await readRecord(register.db, 'crews', 'C1')).toMatchObject({ name: 'North crew', weatherReserve: 0.1 });
});
