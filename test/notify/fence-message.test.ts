import { describe, expect, it } from 'vitest';
import { judgedGroup, seasonOne } from '../../src/forecast/fence-forecast.ts';
import { fenceMessage } from '../../src/notify/fence-message.ts';
import { MATTERS } from '../../src/notify/matter-rules.ts';
import type { NoticedFence } from '../../src/notify/message-facts.ts';
import { ANN, noticedFence, OFFICE } from './noticed-fence.ts';

const message = (changes: Parameters<typeof noticedFence>[0] = {}, recipient = ANN) =>
  fenceMessage({ fence: noticedFence(changes), recipient, office: OFFICE });
/** The text with its line breaks taken out, so that a sentence is found wherever it wraps. */
const flat = (text: string): string => text.replace(/\s+/g, ' ');

describe('fenceMessage', () => {
  it('answers in its first two sentences: what it holds, what it should, and which season it goes short', () => {
    const { subject, text } = message({ matters: ['short'] });
    expect(subject).toBe('Fence F-1 at Heron Landing: will not hold its design gust in season 2027');
    expect(flat(text)).toMatch(
      /^Its posts hold a gust of \d+ mph in season 2027; they should hold 105 mph, the design gust of its site\. It is short in season 2027\. A gust that snaps it comes about once in \d+ years\./,
    );
  });

  it('says by when: before the season opens, or that it is running', () => {
    expect(flat(message({ today: '2027-01-15' }).text)).toContain('before season 2027 opens on June 1, 2027.');
    const running = flat(message({ today: '2027-07-15' }).text);
    expect(running).toContain('since season 2027 is running, at the latest before the next one opens on June 1, 2028.');
  });

  it('dates a closing fence by its own short season', () => {
    const fence = noticedFence({ installed: '2020-10-15', matters: ['closing'] });
    const season = fence.forecast.shortSeason;
    expect(fence.standing).toBe('closing');
    const { subject, text } = fenceMessage({ fence, recipient: ANN, office: OFFICE });
    expect(subject).toContain(`goes short in season ${season}`);
    expect(flat(text)).toContain(`before season ${season} opens on June 1, ${season}`);
  });

  it('carries what an owner needs: doing nothing, how sure, basis, price, call, cautions', () => {
    const text = flat(message().text);
    for (const part of [
      'By season 2032 we expect it to hold',
      'That wind snaps it in season 2027 is unlikely (31 %)',
      'That it is short in season 2027 is',
      '8 chances in 10 that it holds between',
      'about once in 300 years',
      'the office quotes on request',
      'Gale & Rail Fence Care, 555-0100, office@example.org',
      'not a structural certification',
      'the authority having jurisdiction decide',
      'licensed engineer',
      'Stay away from a leaning fence in wind',
      'Call before you dig',
      'Treated wood and its dust need care',
      'licensed applicators',
    ]) {
      expect(text).toContain(part);
    }
  });

  it('mentions the lean speed in the first notice only', () => {
    expect(message({ first: true }).text).toContain('The ground gives way');
    expect(message({ first: false }).text).not.toMatch(/gives way|lean speed/);
  });

  it('says of a fence that holds its gust again, by less than counts, that it does and why it stays counted short', () => {
    const sound = noticedFence({ installed: '2024-04-15' });
    const { snapMps } = judgedGroup(seasonOne(sound.forecast));
    const forecast = {
      ...sound.forecast,
      standing: 'clear' as const,
      shortSeason: null,
      designGust: { ...sound.forecast.designGust, gustMps: snapMps.p50 / 1.02 },
    };
    for (const [standing, matter] of [
      ['short', 'short'],
      ['short from new', 'short from new'],
    ] as const) {
      const fence = { ...sound, forecast, standing, matters: [matter] };
      const english = fenceMessage({ fence, recipient: ANN, office: OFFICE });
      expect(english.subject).toMatch(/holds \d+ mph, less than 3 % above the design gust, and stays counted short$/);
      expect(flat(english.text)).toMatch(
        /It holds \d+ mph, less than 3 % above the design gust, and stays counted short\./,
      );
      expect(flat(english.text)).not.toMatch(/no longer holds|have fallen under|did not reach|short of that since/);
      const spanish = fenceMessage({ fence, recipient: { ...ANN, language: 'es' }, office: OFFICE });
      expect(spanish.subject).toContain('menos del 3 % por encima de la ráfaga de diseño');
      expect(flat(spanish.text)).not.toMatch(/ya no aguanta|han bajado|no llegaban|No la aguanta/);
    }
    const closing = fenceMessage({
      fence: { ...sound, forecast, standing: 'closing', matters: ['closing'] },
      recipient: ANN,
      office: OFFICE,
    });
    expect(closing.subject).toContain('comes within 3 % of its design gust');
    expect(flat(closing.text)).not.toMatch(/[Gg]oes? short in season/);
  });

  it('says the same of its ends', () => {
    const sound = noticedFence({ installed: '2024-04-15' });
    const ends = seasonOne(sound.forecast).ends?.snapMps.p50 ?? 0;
    const forecast = {
      ...sound.forecast,
      designGust: { ...sound.forecast.designGust, gustMps: ends / 1.01 },
    };
    const fence: NoticedFence = {
      ...sound,
      forecast,
      standing: 'clear',
      endsStanding: 'short',
      matters: ['ends short'],
    };
    const { subject, text } = fenceMessage({ fence, recipient: ANN, office: OFFICE });
    expect(subject).toMatch(/its end posts hold \d+ mph, less than 3 % above the design gust, and stay counted short$/);
    expect(flat(text)).not.toContain('no longer hold');
  });

  it('names the unknown inputs that weigh most', () => {
    const ground = { embedmentM: null, footing: null, footingDiameterM: null };
    expect(flat(message({ ground }).text)).toContain('Not on record, and it weighs most:');
    expect(message().text).not.toContain('Not on record');
  });

  it('says what it cannot know where the site has no hazard curve', () => {
    const wind = {
      kind: 'local-rule',
      basis: 'nominal',
      speedMps: 40,
      returnPeriodYears: null,
      second: null,
      hurricane: false,
    } as const;
    const text = flat(message({ wind, matters: ['two thirds'] }).text);
    expect(text).toContain('the site has no curve of gusts');
    expect(text).toContain('is the local rule for fences at this site');
    expect(text).not.toMatch(/null|undefined|NaN|once in/);
  });

  it.each(MATTERS)('has whole sentences about "%s" in both languages and both units', (matter) => {
    for (const language of ['en', 'es'] as const) {
      for (const units of ['us', 'metric'] as const) {
        const { subject, text, html } = message({ matters: [matter], units }, { ...ANN, language });
        expect(`${subject}${text}${html}`).not.toMatch(/null|undefined|NaN|\[object/);
        expect(subject.length).toBeLessThan(140);
        expect(text).toContain(units === 'us' ? 'mph' : 'km/h');
        expect(text).not.toContain(units === 'us' ? 'km/h' : 'mph');
      }
    }
  });

  it('is in Spanish throughout for an owner who reads Spanish', () => {
    const { text, subject } = message({ matters: ['short', 'once in 25'] }, { ...ANN, language: 'es' });
    expect(subject).toContain('no aguantará su ráfaga de diseño');
    expect(flat(text)).toContain('antes de que empiece la temporada 2027, el 1 de junio de 2027');
    expect(text).not.toMatch(/\b(the|fence|holds|season|should)\b/);
  });

  it('combines several matters into one message with the weightiest as its subject', () => {
    const { subject, text } = message({ matters: ['two thirds', 'once in 25', 'short'] });
    expect(subject).toContain('will not hold');
    expect(flat(text)).toContain('will not reach the design gust of the site, 105 mph, in season 2027.');
    expect(flat(text)).toContain('more often than once in 25 years');
    expect(flat(text)).toContain('Rot has taken more than a third');
  });

  it('shows one picture with its content in words, and reads without it', () => {
    const { html, pictures } = message();
    expect(pictures).toHaveLength(1);
    expect(pictures[0]?.svg).toMatch(/^<svg /);
    expect(pictures[0]?.alt).toMatch(/it snaps at \d+ mph in season 2027 .* its design gust is 105 mph, short now/);
    expect(html).toContain(`src="cid:${pictures[0]?.cid}"`);
    expect(html.match(/<img /g)).toHaveLength(1);
    expect(html).toContain('prefers-color-scheme:dark');
    expect(html).toContain('width=device-width');
    expect(html.length).toBeLessThan(100_000);
  });

  it('escapes what people typed', () => {
    const { html, subject } = message(
      { siteName: '<script>alert(1)</script>', place: '"A" & B' },
      { ...ANN, name: 'Ann\r\nBcc: everyone@example.org' },
    );
    expect(html).not.toContain('<script');
    expect(html).toContain('&lt;script&gt;');
    expect(subject).not.toMatch(/[\r\n]/);
  });

  it('leads a letter with the office, the day and the postal address and does not ask for an answer to the message', () => {
    const { text } = message({}, { ...ANN, letter: { postalAddress: '1 Quill Lane\nQuillback', day: '2027-01-15' } });
    expect(text).toMatch(
      /^Gale & Rail Fence Care, 555-0100, office@example\.org\n\nJanuary 15, 2027\n\nAnn Tidewell, 1 Quill Lane, Quillback/,
    );
    expect(flat(text)).toContain('To get no more of these, call 555-0100 or write to office@example.org.');
    expect(text).not.toContain('answer this message');
  });

  it('tells a running season from one that has not opened', () => {
    const running = message({ today: '2027-07-15' });
    expect(running.subject).toContain('no longer holds its design gust in season 2027');
    expect(flat(running.text)).toContain('no longer reach the design gust of the site, 105 mph.');
    const spanish = message({ today: '2027-07-15' }, { ...ANN, language: 'es' });
    expect(flat(spanish.text)).toContain('ya no alcanzan la ráfaga de diseño del lugar');
  });

  it('says in its first lines what is suggested, by which day and at what cost, and later what waiting costs', () => {
    const offer = {
      currency: 'USD',
      works: [
        { kind: 'post-swap' as const, postCount: 11, cost: { low: 900, high: 1400 } },
        { kind: 'rebuild' as const, postCount: 11, cost: { low: 2900, high: 5500 } },
      ],
      nextOpening: '2027-06-01',
      latestDay: '2027-05-24',
      waiting: { chance: 0.31, extra: 2340 },
    };
    const english = flat(message({ offer, today: '2027-01-15' }).text);
    expect(english).toContain(
      'We suggest new posts (about 900 to 1,400 dollars) or a rebuild (about 2,900 to 5,500 dollars), by May 24, 2027, so that new footings are ready when season 2027 opens on June 1, 2027. Budget figures, not a quote. Fence F-1 at',
    );
    expect(english).toContain('If it does, putting it right costs about 2,300 dollars more than in good time');
    // a day that is past, or too late for a footing, is not named
    expect(flat(message({ offer: { ...offer, latestDay: null }, today: '2027-05-28' }).text)).toContain(
      'before season 2027 opens on June 1, 2027',
    );
    expect(flat(message({ offer: { ...offer, currency: 'MXN' } }, { ...ANN, language: 'es' }).text)).toContain(
      'Sugerimos postes nuevos (unos 900 a 1,400 pesos mexicanos) o una reconstrucción',
    );
  });

  it('never says how likely something is by a percentage alone', () => {
    for (const language of ['en', 'es'] as const) {
      const text = flat(message({}, { ...ANN, language }).text);
      for (const [, before] of text.matchAll(/(.)(?:under |over |menos del |más del )?\d+ %/g))
        expect('(').toContain(before);
    }
  });

  it('tells the chance of a whole season once a third of it is over, and why it is higher than the gust alone', () => {
    expect(flat(message({ today: '2027-06-15' }).text)).toContain(
      'That wind snaps it in season 2027 is unlikely (31 %)',
    );
    const late = flat(message({ today: '2027-11-20' }).text);
    expect(late).toContain('That wind snaps it over a whole season like 2027 is');
    const sounder = flat(message({ installed: '2018-04-15', matters: ['two thirds'] }).text);
    expect(sounder).toMatch(/higher than one in \d+, because the fence may be much weaker than the middle value\./);
  });

  it('says of a rotted fence that was short from new what rot took since, and that its weak posts need replacing', () => {
    const fence = noticedFence({ installed: '2010-04-15', matters: ['short from new'], standing: 'short from new' });
    const { subject, text } = fenceMessage({ fence, recipient: ANN, office: OFFICE });
    expect(subject).toMatch(/: short of its design gust since it was built: \d+ of 105 mph$/);
    expect(flat(text)).toMatch(/Since then rot has taken it from \d+ mph to \d+ mph\./);
    expect(flat(text)).toContain('Have the weak posts replaced before season 2027 opens');
    const sound = message({ installed: '2026-11-15', matters: ['short from new'], standing: 'short from new' });
    expect(flat(sound.text)).not.toMatch(/rot has taken|weak posts/);
  });

  it('never says that a fence holds next to nothing, but that it is rotted through', () => {
    const fence = noticedFence({ matters: ['short'] });
    const nothing = { p10: 0, p50: 0.4, p90: 6 };
    const seasons = fence.forecast.seasons.map((season) =>
      season.season === 1 && season.line ? { ...season, line: { ...season.line, snapMps: nothing } } : season,
    );
    const rotted = { ...fence, forecast: { ...fence.forecast, seasons } };
    const text = flat(fenceMessage({ fence: rotted, recipient: ANN, office: OFFICE }).text);
    expect(text).toMatch(
      /^Its posts are rotted through by our estimate; any strong wind may break it\. Keep people away/,
    );
    expect(text).not.toMatch(/holds? (a gust of )?[01] mph/);
  });

  it('asks for nothing where the fence stands clear again', () => {
    const { text } = message({ installed: '2026-04-15', matters: ['better'] });
    expect(flat(text)).toContain('You need not do anything.');
    const swapped = noticedFence({
      installed: '2026-04-15',
      matters: ['better'],
      renewal: { kind: 'post-swap', day: '2026-11-20' },
    });
    const one = seasonOne(swapped.forecast);
    expect(judgedGroup(one).leanMps.p50).toBeLessThan(judgedGroup(one).snapMps.p50);
    expect(flat(fenceMessage({ fence: swapped, recipient: ANN, office: OFFICE }).text)).toMatch(
      /after the post swap of November 20, 2026: .* The footings are as before and lean at about \d+ mph\./,
    );
    expect(text).not.toContain('If nothing is done');
  });
});
