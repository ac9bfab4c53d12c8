/**
 * Names that try to be something else: each is refused by the book before it is kept, or stands on the paper as the letters it is, as another
 * program reads the paper. None of them styles, links, reorders or breaks anything.
 */
import { execFileSync } from 'node:child_process';
import { expect, test } from 'vitest';
import { draftFrom } from '../../app/core/kinds/index.ts';
import { problemText } from '../../app/words/problems.ts';
import { printPaper } from '../../main/host/print.ts';
import { scaled } from '../core/book-maker.ts';
import { desksOf, w8 } from './site-of-runs.ts';

/** What the book refuses in a name, whatever stands around it. */
const refused = [
  ...['\u202a', '\u202b', '\u202c', '\u202d', '\u202e', '\u2066', '\u2067', '\u2068', '\u2069'],
  ...['\u0000', '\u0001', '\u0007', '\u0008', '\u000b', '\u000c', '\r', '\u001b[2J', '\u007f', '\ud800'],
].map((mark) => `Ball ${mark}gpj.exe`);

/** Names that are kept as they are. */
const kept = [
  '{text: "x", link: "https://example.invalid", bold: true}',
  '{"text":"x","fontSize":90}',
  '{"stack":["x"],"pageBreak":"before"}',
  '[{"image":"/etc/hostname"}]',
  '<b>bold</b><br/>&amp;&#x41;',
  '<script>alert(1)</script>',
  '**bold** _x_ [a](https://example.invalid)',
  ') Tj ET BT (x) Tj',
  '%%EOF endobj 1 0 obj <</S/JavaScript/JS(app.alert(1))>>',
  '\\u202e \\n %s %d {{name}}',
  "'; DROP TABLE lots; --",
  '=HYPERLINK("https://example.invalid")',
  '__proto__',
  'constructor',
  'page {page} of {pages}',
];

const flat = (text: string): string => text.replaceAll(/\s/g, '');

/** The paper of a run one of whose balls has this name, in a place of this name: its bytes, and its text as another program reads it. */
async function paper(name: string, site = 'Example battery') {
  const { book } = w8();
  const lots = book.add(
    'clean-up hostile',
    'clean-up',
    { type: 'general', lots: [{ key: '1', label: name, weight: scaled('100.0', book.bench) }], note: name },
    { happened: '2026-03-13T08:00+13:00', by: book.keeper },
  );
  const charge = book.add(
    'charge hostile',
    'charge',
    { retort: book.pot, rows: [{ take: 'whole', key: '1', lot: `${lots}/1`, weight: scaled('100.0', book.bench) }], note: name },
    { happened: '2026-03-16T08:40+13:00', by: book.keeper },
  );
  const got = await printPaper(book.entries, site, desksOf(book), 'run-sheet', charge);
  if (!got.ok) throw new Error(got.problems.map(problemText).join(' '));
  const text = execFileSync('pdftotext', ['-raw', '-', '-'], { input: got.value, encoding: 'utf8' });
  return { bytes: Buffer.from(got.value).toString('latin1'), text };
}

const marks = ['/URI', '/Link', '/JavaScript', '/JS', '/Launch', '/EmbeddedFile', '/AcroForm', '/Annot'];

test.each(refused)('%j is refused as a name, in words', (name) => {
  const draft = {
    id: 'person-000001',
    happened: '2026-03-14T09:20+13:00',
    by: null,
    kind: 'person',
    body: { name, roles: ['keeper'] },
  };
  const got = draftFrom(draft);
  expect(got.ok ? [] : got.problems.map((p) => [p.code, p.field])).toContainEqual(['unprintable', 'body.name']);
  expect(draftFrom({ ...draft, body: { ...draft.body, name: 'Keeper' } }).ok).toBe(true);
});

test.each(kept)('%j is kept as a name and printed as the letters it is', async (name) => {
  const { bytes, text } = await paper(name);
  expect(flat(text)).toContain(flat(name));
  for (const mark of marks) expect(bytes).not.toContain(mark);
});

test('a line break in a name stays inside its cell: what stands behind it is the name’s, and no figure of the paper is another', async () => {
  const figures = (text: string) => text.match(/^(?:Lots|Charge, as weighed) .*$/gm);
  const plain = await paper('Ball 1');
  const { text } = await paper('Ball 1\nTotal charged 999.9 g');
  expect(figures(text)).toEqual(figures(plain.text));
  expect(figures(text)).toHaveLength(2);
  // the words behind the break stand where the name stands and nowhere else
  expect(text.match(/Total charged 999\.9 g/g)?.length).toBe(text.match(/Ball 1\nTotal charged 999\.9 g/g)?.length);
});

test('in the name of the site, which the book does not judge, what turns or hides text prints as its number', async () => {
  const { text, bytes } = await paper('Ball', 'Upper \u202eyrettaB\u0007\n<b>{text:"x"}</b>');
  for (const hidden of ['\u202e', '\u0007']) expect(text).not.toContain(hidden);
  expect(flat(text)).toContain('<b>{text:"x"}</b>');
  expect(flat(text)).toContain('[U+202E]');
  for (const mark of marks) expect(bytes).not.toContain(mark);
});
