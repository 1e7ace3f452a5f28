import { describe, expect, it } from 'vitest';
import { addFeedLink, answeringFeedLink, listFeedLinks, revokeFeedLink } from '../../src/register/feed-link-store.ts';
import { temporaryRegister } from './made-up-register.ts';

const [FIRST, SECOND] = ['a'.repeat(64), 'b'.repeat(64)];
const MADE = '2026-11-25T12:00:00.000Z';
const ENDED = '2026-11-26T12:00:00.000Z';

describe('links to calendars', () => {
  it('answer from the moment they are made until they are revoked, each by itself', async () => {
    const { db } = await temporaryRegister();
    const first = await addFeedLink(db, { kind: 'crew', ref: 'salt' }, FIRST, MADE);
    const second = await addFeedLink(db, { kind: 'crew', ref: 'salt' }, SECOND, MADE);
    expect(await answeringFeedLink(db, FIRST)).toEqual({
      id: first.id,
      kind: 'crew',
      ref: 'salt',
      createdAt: MADE,
      revokedAt: null,
    });
    expect(await revokeFeedLink(db, first.id, ENDED)).toMatchObject({ revokedAt: ENDED });
    expect(await answeringFeedLink(db, FIRST)).toBeNull();
    expect((await answeringFeedLink(db, SECOND))?.id).toBe(second.id);
    expect((await listFeedLinks(db)).map(({ id, revokedAt }) => [id, revokedAt])).toEqual([
      [first.id, ENDED],
      [second.id, null],
    ]);
  });

  it('stay revoked as they were when they are revoked again', async () => {
    const { db } = await temporaryRegister();
    const { id } = await addFeedLink(db, { kind: 'site', ref: 'quill' }, FIRST, MADE);
    await revokeFeedLink(db, id, ENDED);
    expect(await revokeFeedLink(db, id, '2027-01-01T00:00:00.000Z')).toMatchObject({ revokedAt: ENDED });
    expect(await revokeFeedLink(db, id + 1, ENDED)).toBeNull();
  });

  it('are never edited, brought back or deleted in the database', async () => {
    const { db } = await temporaryRegister();
    const { id } = await addFeedLink(db, { kind: 'site', ref: 'quill' }, FIRST, MADE);
    const change = (set: object) => db.updateTable('feed_links').set(set).where('id', '=', id).execute();
    await expect(change({ token_sha256: SECOND })).rejects.toThrow(/only ever revoked/);
    await revokeFeedLink(db, id, ENDED);
    await expect(change({ revoked_at: null })).rejects.toThrow(/never answers again/);
    await expect(db.deleteFrom('feed_links').execute()).rejects.toThrow(/never deleted/);
    await expect(addFeedLink(db, { kind: 'crew', ref: 'salt' }, FIRST, MADE)).rejects.toThrow(/UNIQUE/);
  });
});
