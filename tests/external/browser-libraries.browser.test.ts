import { expect, fixture, html } from '@open-wc/testing';
import { HyperFormula } from 'hyperformula';
import { LitElement } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import Papa from 'papaparse';
import packageFile from '../../package.json' with { type: 'json' };

@customElement('test-mark')
class TestMark extends LitElement {
  @property({ type: Number }) coats = 1;

  protected override render() {
    return html`<output>${this.coats} coats</output>`;
  }
}

describe('the libraries in a browser', () => {
  it('repaint a Lit element when a decorated property changes from 1 to 3', async () => {
    const mark = await fixture<TestMark>(html`<test-mark></test-mark>`);
    mark.coats = 3;
    await mark.updateComplete;
    expect(mark.shadowRoot?.textContent).to.equal('3 coats');
  });

  it('calculate 2 * 21 in HyperFormula', () => {
    const workbook = HyperFormula.buildFromArray([['=2*21']], { licenseKey: 'gpl-v3' });
    expect(workbook.getCellValue({ sheet: 0, row: 0, col: 0 })).to.equal(42);
  });

  it('read a quoted comma in one CSV row', () => {
    expect(Papa.parse<string[]>('"a,b",c').data).to.deep.equal([['a,b', 'c']]);
  });

  it('import a JSON file', () => {
    expect(packageFile.name).to.equal('spreadrate');
  });
});
