import { expect } from '@open-wc/testing';
import { cellOf, focus, gridOf, press } from '../../../helpers/grid-page.ts';
import { withPageInFront } from '../../../helpers/page-focus.ts';
import { withTheme } from '../../../helpers/page-theme.ts';
import { coatTable } from '../../../helpers/shown-fields.ts';

let leave: () => void;

beforeEach(() => {
  leave = withPageInFront();
});

afterEach(() => leave());

describe('a grid for those who do not see it', () => {
  it('counts its rows and columns, and says what is only to be read', async () => {
    const { grid } = await gridOf();
    const table = grid.renderRoot.querySelector('[role=grid]');
    expect(table?.getAttribute('aria-rowcount')).to.equal('5');
    expect(table?.getAttribute('aria-colcount')).to.equal('6');
    expect(cellOf(grid, 'base', 'need').getAttribute('aria-readonly')).to.equal('true');
    expect(cellOf(grid, 'base', 'coverage').hasAttribute('aria-readonly')).to.equal(false);
    expect(cellOf(grid, 'base', 'coat').getAttribute('scope')).to.equal('row');
  });

  for (const scheme of ['light', 'dark'] as const)
    it(`has no fault that axe can find, at rest, edited and with a fault: ${scheme}`, async () => {
      const undress = await withTheme(scheme);
      const { grid } = await gridOf(
        coatTable(['base', 'clear'], { coverage: { standing: 'changed', standard: '125 ft²/gal' } }),
      );
      await expect(grid).to.be.accessible();
      await focus(grid, 'base', 'coverage');
      await press(grid, 'w');
      await expect(grid).to.be.accessible();
      await press(grid, 'Tab');
      await expect(grid).to.be.accessible();
      undress();
    });

  it('has no control smaller than 24 × 24', async () => {
    const { grid } = await gridOf(coatTable(['base', 'clear'], { coverage: { standing: 'changed', standard: '125' } }));
    await focus(grid, 'base', 'coverage');
    const controls = [...grid.renderRoot.querySelectorAll<HTMLElement>('button, input, td[tabindex], th[tabindex]')];
    const small = controls.filter((control) => {
      const { width, height } = control.getBoundingClientRect();
      return width < 24 || height < 24;
    });
    expect(controls.length).to.be.greaterThan(10);
    expect(small.map((control) => control.outerHTML)).to.deep.equal([]);
  });
});
