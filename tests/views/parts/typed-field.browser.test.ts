import { expect, fixture, html } from '@open-wc/testing';
import '../../../src/views/parts/number-field.ts';
import type { TypedField } from '../../../src/views/parts/typed-field.ts';
import '../../../src/views/parts/words-field.ts';
import { withPageInFront } from '../../helpers/page-focus.ts';
import { unit } from '../../helpers/shown-fields.ts';

let leave: () => void;

beforeEach(() => {
  leave = withPageInFront();
});

afterEach(() => leave());

const reason = 'It must lie between 0 and 500.';

interface Held {
  readonly field: TypedField;
  readonly input: HTMLInputElement;
  /** How often a refusal was given up. */
  readonly givenUp: () => number;
}

/** In the hand of somebody who keeps the reason until it is given up. */
async function heldField(kind: 'number' | 'words'): Promise<Held> {
  const field = await fixture<TypedField>(
    kind === 'number'
      ? html`<number-field label="Loaded labour" .unit=${unit('1')} text="38"></number-field>`
      : html`<words-field label="Read by" text="Dana R."></words-field>`,
  );
  let times = 0;
  field.addEventListener('refused-given-up', () => {
    times += 1;
    field.refusal = '';
  });
  const input = field.renderRoot.querySelector('input');
  if (input === null) throw new Error('The field has no input');
  return { field, input, givenUp: () => times };
}

async function refuse({ field, input }: Held, text: string): Promise<void> {
  input.value = text;
  input.dispatchEvent(new InputEvent('input'));
  await field.updateComplete;
  input.dispatchEvent(new Event('change'));
  field.refusal = reason;
  await field.updateComplete;
}

async function pressEscape({ field, input }: Held): Promise<void> {
  input.dispatchEvent(new KeyboardEvent('keydown', { key: 'Escape' }));
  await field.updateComplete;
}

function errorOf({ field }: Held): string {
  return field.renderRoot.querySelector('[role=alert]')?.textContent?.trim() ?? '';
}

for (const [kind, inForce] of [
  ['number', '38'],
  ['words', 'Dana R.'],
] as const)
  describe(`a refused text of ${kind}`, () => {
    it('goes with its reason on Escape', async () => {
      const held = await heldField(kind);
      await refuse(held, '38,000');
      expect(held.input.value).to.equal('38,000');
      expect(errorOf(held)).to.contain(reason);
      await pressEscape(held);
      expect(held.input.value).to.equal(inForce);
      expect(errorOf(held)).to.equal('');
      expect(held.givenUp()).to.equal(1);
    });

    it('keeps the text again when the next is refused for the same reason', async () => {
      const held = await heldField(kind);
      await refuse(held, '38,000');
      await refuse(held, '39,000');
      expect(held.input.value).to.equal('39,000');
      expect(errorOf(held)).to.contain(reason);
    });

    it('gives nothing up where nothing was refused', async () => {
      const held = await heldField(kind);
      held.input.value = '40';
      held.input.dispatchEvent(new InputEvent('input'));
      await pressEscape(held);
      expect(held.givenUp()).to.equal(0);
    });
  });
