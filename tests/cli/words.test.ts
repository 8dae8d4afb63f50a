import { describe, expect, it } from 'vitest';
import { explainOutput } from '../../src/cli/explain-output.ts';
import { jsonOutput } from '../../src/cli/json-output.ts';
import { entryList } from '../../src/cli/list-output.ts';
import { tableOutput } from '../../src/cli/table-output.ts';
import { faultsOf, priced } from './priced.ts';

const solid = 'solid-colour';
const rows = { moisture_tests: [{ method: 'sheet', exposure: 20, sheet_seen: 'damp' }, { taken_by: 'Ari K.' }] };
const named = priced([solid], { set: { reader_name: ' Dana R. ', 'moisture_tests.1.taken_by': 'Bo T.' }, rows });

describe('words on the command line', () => {
  it('are given by name, in a cell and in rows, and stand in the JSON as they are kept', () => {
    const { floor } = JSON.parse(jsonOutput(named));
    expect(floor.lines.reader_name).toEqual({ value: 'Dana R.', unit: null, formula: null });
    expect(floor.tables.moisture_tests.map((row: { taken_by: string }) => row.taken_by)).toEqual(['Bo T.', 'Ari K.']);
    const bare = JSON.parse(jsonOutput(priced([solid])));
    expect(bare.floor.lines.reader_name.value).toBe('');
  });

  it('are told in the table apart from what the customer is told, and left out while there are none', () => {
    const blocks = tableOutput(named).split('\n\n');
    expect(blocks.find((block) => block.startsWith('WRITTEN DOWN'))).toBe(
      [
        'WRITTEN DOWN, NOT FOR THE CUSTOMER',
        '  · Read by, name: Dana R.',
        '  · Moisture tests, Row 1: Read by, name: Bo T.',
        '  · Moisture tests, Row 2: Read by, name: Ari K.',
      ].join('\n'),
    );
    expect(blocks.find((block) => block.startsWith('THE CUSTOMER IS TOLD'))).not.toMatch(/Dana|Bo T|Ari/);
    expect(tableOutput(priced([solid]))).not.toContain('WRITTEN DOWN');
  });

  it('are refused over 80 characters, with control characters, and where a number stands in a row', () => {
    expect(faultsOf([solid], { set: { reader_name: 'x'.repeat(81) } })).toEqual([
      expect.stringContaining('At most 80 characters may stand here; these are 81.'),
    ]);
    expect(faultsOf([solid], { set: { reader_name: 'Dana\u0007' } })).toEqual([
      expect.stringContaining('Only plain text in one line may stand here.'),
    ]);
    expect(faultsOf([solid], { rows: { moisture_tests: [{ taken_by: 7 }] } })).toEqual([
      expect.stringContaining('“taken_by” takes words, not a number.'),
    ]);
  });

  it('are listed with what may be set, and have nothing to explain', () => {
    expect(entryList(named)).toMatch(/reader_name +Dana R\. +words, at most 80 characters +floor/);
    expect(entryList(named)).toMatch(/taken_by\s+\(words, at most 80\s+characters\)/);
    for (const name of ['reader_name', 'moisture_tests.1.taken_by'])
      expect(explainOutput(named, name)).toEqual({
        kind: 'faults',
        faults: [`--explain ${name}: “${name}” is what a person writes; there is nothing to explain.`],
      });
  });
});
