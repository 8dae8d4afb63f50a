import { expect, fixture, html } from '@open-wc/testing';
import type { SeveralEdits } from '../../../../src/quote/edit.ts';
import type { FloorPlan } from '../../../../src/views/parts/plan/floor-plan.ts';
import '../../../../src/views/parts/plan/floor-plan.ts';
import type { MeasuredFloor } from '../../../../src/views/parts/plan/measured-floor.ts';
import { areaByCorners, floorOf, measuredArea } from '../../../helpers/measured-areas.ts';
import { withPageInFront } from '../../../helpers/page-focus.ts';
import { withTheme } from '../../../helpers/page-theme.ts';
import { drawnToWidth } from '../../../helpers/until.ts';

const l = areaByCorners([0, 0], [24, 0], [24, 14], [16, 14], [16, 22], [0, 22]);

let leave: () => void;

beforeEach(() => {
  leave = withPageInFront();
});

afterEach(() => leave());

interface Shown {
  readonly plan: FloorPlan;
  readonly edits: SeveralEdits[];
  /** What those who listen are told, in order. */
  readonly said: string[];
}

async function planOf(floor: MeasuredFloor): Promise<Shown> {
  const edits: SeveralEdits[] = [];
  const said: string[] = [];
  const plan = await fixture<FloorPlan>(
    html`<floor-plan
      .floor=${floor}
      @plan-edit=${(event: CustomEvent<SeveralEdits>) => edits.push(event.detail)}
      @told=${(event: CustomEvent<string>) => said.push(event.detail)}
    ></floor-plan>`,
  );
  await drawnToWidth(plan, 'svg.drawing');
  return { plan, edits, said };
}

async function moving(floor: MeasuredFloor = floorOf(l)): Promise<Shown> {
  const shown = await planOf(floor);
  button(shown.plan, 'Move corners').click();
  await settled(shown.plan);
  return shown;
}

async function settled(plan: FloorPlan): Promise<void> {
  await plan.updateComplete;
  await plan.renderRoot.querySelector('corner-handles')?.updateComplete;
}

function button(plan: FloorPlan, words: string): HTMLButtonElement {
  const found = [...plan.renderRoot.querySelectorAll('button')].find(
    (each) => each.textContent.trim() === words || each.ariaLabel === words,
  );
  if (found === undefined) throw new Error(`There is no button “${words}”`);
  return found;
}

function handle(plan: FloorPlan, corner: number): SVGGElement {
  const handles = plan.renderRoot.querySelector('corner-handles')?.renderRoot.querySelectorAll('g') ?? [];
  const found = handles[corner - 1];
  if (found === undefined) throw new Error(`There is no corner ${corner}`);
  return found;
}

function told(plan: FloorPlan): string {
  return plan.renderRoot.querySelector('figure ~ .told')?.textContent.trim() ?? '';
}

function middleOf(element: Element): { x: number; y: number } {
  const { left, top, width, height } = element.getBoundingClientRect();
  return { x: left + width / 2, y: top + height / 2 };
}

/** Pixels a foot, from the two corners of the 24 ft side. */
function scaleOf(plan: FloorPlan): number {
  return (middleOf(handle(plan, 2)).x - middleOf(handle(plan, 1)).x) / 24;
}

async function pointer(plan: FloorPlan, corner: number, type: string, feet: readonly [number, number]): Promise<void> {
  const target = handle(plan, corner);
  // No browser gives a made-up pointer away.
  target.setPointerCapture = () => undefined;
  const from = middleOf(handle(plan, 1));
  const scale = scaleOf(plan);
  const [clientX, clientY] = [from.x + feet[0] * scale, from.y - feet[1] * scale];
  target.dispatchEvent(new PointerEvent(type, { pointerId: 7, clientX, clientY, bubbles: true, cancelable: true }));
  await settled(plan);
}

async function press(plan: FloorPlan, corner: number, key: string, more: KeyboardEventInit = {}): Promise<void> {
  handle(plan, corner).dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true, ...more }));
  await settled(plan);
}

async function letGo(plan: FloorPlan, corner: number, key: string): Promise<void> {
  handle(plan, corner).dispatchEvent(new KeyboardEvent('keyup', { key, bubbles: true }));
  await settled(plan);
}

/** What an edit enters, as `row.column value`. */
function entered(edit: SeveralEdits | undefined): string[] {
  return (edit?.edits ?? []).flatMap((each) =>
    each.kind === 'enterCell' ? [`${each.row}.${each.column} ${JSON.stringify(each.value)}`] : [],
  );
}

describe('a corner of the plan', () => {
  it('is dragged to 24 × 18 ft with its lengths shown live, and makes one edit when it is let go', async () => {
    const { plan, edits } = await moving();
    await pointer(plan, 3, 'pointerdown', [24, 14]);
    await pointer(plan, 3, 'pointermove', [24, 15.9]);
    await pointer(plan, 3, 'pointermove', [24.02, 17.98]);
    expect(told(plan)).to.equal("Corner 3: across 24', along 18'");
    expect(plan.renderRoot.querySelector('svg.drawing')?.textContent).to.contain("18'");
    expect(plan.renderRoot.querySelector('svg.drawing')?.textContent).to.contain('480 ft²');
    expect(edits).to.deep.equal([]);
    await pointer(plan, 3, 'pointerup', [24.02, 17.98]);
    expect(edits).to.have.lengthOf(1);
    expect(edits[0]?.words).to.equal('corner 3 of Bay');
    expect(entered(edits[0])).to.deep.equal([`c3.along {"value":18,"typed":"18'"}`]);
  });

  it('goes back where it was on Escape, and where the pointer is taken away', async () => {
    const { plan, edits } = await moving();
    const before = handle(plan, 3).getAttribute('transform');
    await pointer(plan, 3, 'pointerdown', [24, 14]);
    await pointer(plan, 3, 'pointermove', [24, 18]);
    expect(handle(plan, 3).getAttribute('transform')).to.not.equal(before);
    await press(plan, 3, 'Escape');
    expect(handle(plan, 3).getAttribute('transform')).to.equal(before);
    await pointer(plan, 3, 'pointerup', [24, 18]);
    await pointer(plan, 3, 'pointerdown', [24, 14]);
    await pointer(plan, 3, 'pointermove', [24, 18]);
    await pointer(plan, 3, 'pointercancel', [24, 18]);
    expect(handle(plan, 3).getAttribute('transform')).to.equal(before);
    expect(edits).to.deep.equal([]);
  });

  it('stays where it was when it is dropped where side 1 would cross side 3, which are marked on the way', async () => {
    const { plan, edits } = await moving();
    await pointer(plan, 4, 'pointerdown', [16, 14]);
    await pointer(plan, 4, 'pointermove', [20, -1]);
    expect(plan.renderRoot.querySelectorAll('line.faulty')).to.have.lengthOf(2);
    await pointer(plan, 4, 'pointerup', [20, -1]);
    expect(told(plan)).to.equal('Side 1 would cross side 3; the corner stays where it was.');
    expect(plan.renderRoot.querySelectorAll('line.faulty')).to.have.lengthOf(0);
    expect(edits).to.deep.equal([]);
  });

  it('is silent on its way, and tells those who listen once where it came to or why it stays', async () => {
    const { plan, said } = await moving();
    const [how] = said.splice(0);
    expect(how).to.contain('arrow keys');
    await pointer(plan, 3, 'pointerdown', [24, 14]);
    await pointer(plan, 3, 'pointermove', [24, 15.9]);
    await pointer(plan, 3, 'pointermove', [24.02, 17.98]);
    expect(said).to.deep.equal([]);
    await pointer(plan, 3, 'pointerup', [24.02, 17.98]);
    expect(said.splice(0)).to.deep.equal(['Corner 3: across 24 ft, along 18 ft.']);
    await pointer(plan, 4, 'pointerdown', [16, 14]);
    await pointer(plan, 4, 'pointermove', [20, -1]);
    expect(said).to.deep.equal([]);
    await pointer(plan, 4, 'pointerup', [20, -1]);
    expect(said).to.deep.equal(['Side 1 would cross side 3; the corner stays where it was.']);
    expect(plan.renderRoot.querySelectorAll('[role=status], [aria-live]')).to.have.lengthOf(0);
  });

  it('touched and let go makes no edit', async () => {
    const { plan, edits } = await moving();
    await pointer(plan, 3, 'pointerdown', [24, 14]);
    await pointer(plan, 3, 'pointerup', [24, 14]);
    expect(edits).to.deep.equal([]);
  });

  it('moves 1 in by an arrow key and 1 ft with Shift; a held key is one edit', async () => {
    const { plan, edits } = await moving();
    await press(plan, 3, 'ArrowUp');
    await press(plan, 3, 'ArrowUp');
    await press(plan, 3, 'ArrowLeft', { shiftKey: true });
    expect(edits).to.deep.equal([]);
    await letGo(plan, 3, 'ArrowLeft');
    expect(edits.map(entered)).to.deep.equal([
      [`c3.across {"value":23,"typed":"23'"}`, `c3.along {"value":${170 / 12},"typed":"14' 2\\""}`],
    ]);
  });

  it('is not taken by a key to where sides would touch, and says which', async () => {
    const near = areaByCorners([0, 0], [24, 0], [24, 14], [16, 1], [16, 22], [0, 22]);
    const { plan, edits } = await moving(floorOf(near));
    await press(plan, 4, 'ArrowDown', { shiftKey: true });
    expect(told(plan)).to.equal('Side 1 would touch side 3; the corner stays where it was.');
    await letGo(plan, 4, 'ArrowDown');
    expect(edits).to.deep.equal([]);
  });

  it('has a name that says where it is, and a target for a thumb', async () => {
    const { plan } = await moving();
    expect(handle(plan, 3).getAttribute('aria-label')).to.equal('corner 3 of Bay, across 24 ft, along 14 ft');
    for (let corner = 1; corner <= 6; corner += 1) {
      const { width, height } = handle(plan, corner).getBoundingClientRect();
      // To a hundredth: browsers place what is drawn in single precision.
      expect(Math.round(Math.min(width, height) * 100) / 100).to.be.at.least(44);
    }
  });

  it('is added by Insert or by its key in the list, and taken away by Delete', async () => {
    const { plan, edits } = await moving();
    await press(plan, 2, 'Insert');
    button(plan, 'Add a corner on side 5 of Bay').click();
    await press(plan, 6, 'Delete');
    expect(edits.map(({ words }) => words)).to.deep.equal([
      'a corner on side 2 of Bay',
      'a corner on side 5 of Bay',
      'corner 6 of Bay taken away',
    ]);
  });

  it('is not taken from a triangle', async () => {
    const { plan, edits } = await moving(floorOf(areaByCorners([0, 0], [20, 0], [0, 20])));
    button(plan, 'Take corner 2 of Bay away').click();
    await settled(plan);
    expect(told(plan)).to.equal('An area keeps at least three corners.');
    expect(edits).to.deep.equal([]);
  });
});

describe('the plan', () => {
  it('turns a rectangle into its four corners in one edit', async () => {
    const { plan, edits } = await planOf(floorOf(measuredArea('rectangle', { length: 24, width: 22 })));
    button(plan, 'Draw by corners').click();
    expect(edits).to.have.lengthOf(1);
    expect(edits[0]?.edits.filter(({ kind }) => kind === 'addRow')).to.have.lengthOf(4);
    expect(entered(edits[0])).to.deep.equal(['bay.shape "corners"']);
  });

  it('says in its description and its list what it draws', async () => {
    const bay = { ...measuredArea('rectangle', { length: 24, width: 22 }), shapeWords: 'Rectangle', area: 528 };
    const { plan } = await planOf(floorOf(bay, { ...measuredArea('triangle'), row: 'wedge', label: 'Wedge' }));
    const words = 'Bay (Rectangle): 24 ft, 22 ft, 24 ft, 22 ft, 528 ft²';
    expect(plan.renderRoot.querySelector('svg')?.getAttribute('aria-label')).to.contain(words);
    expect(plan.renderRoot.querySelector('details li')?.textContent).to.equal(words);
    expect(plan.renderRoot.textContent).to.contain('Wedge is not drawn: its length cannot be worked out.');
  });

  for (const width of [320, 820])
    it(`has no text under 12 px and none beside its sheet at ${width} px`, async () => {
      const { plan } = await planOf(floorOf({ ...l, area: 464 }));
      plan.style.width = `${width}px`;
      await drawnToWidth(plan, 'svg.drawing');
      await settled(plan);
      const sheet = plan.renderRoot.querySelector('svg.drawing')?.getBoundingClientRect();
      const texts = [...plan.renderRoot.querySelectorAll('svg text')];
      expect(texts.length).to.be.above(5);
      for (const text of texts) {
        expect(Number.parseFloat(getComputedStyle(text).fontSize)).to.be.at.least(12);
        const { left, right } = text.getBoundingClientRect();
        expect(left).to.be.at.least(sheet?.left ?? Number.NaN);
        expect(right).to.be.at.most(sheet?.right ?? Number.NaN);
      }
    });

  for (const scheme of ['light', 'dark'] as const)
    it(`has no fault that axe can find, with corners to move: ${scheme}`, async () => {
      const undress = await withTheme(scheme);
      const { plan } = await moving(floorOf({ ...l, area: 464 }));
      await expect(plan).to.be.accessible();
      undress();
    });
});
