import { expect, fixture, html } from '@open-wc/testing';
import type { StartPage } from '../../../src/views/app/start-page.ts';
import '../../../src/views/app/start-page.ts';

describe('the list of quotes', () => {
  it('says the day of the last change in words, on the calendar of whoever reads: May 31, 2026', async () => {
    const updatedAt = new Date(2026, 4, 31, 23, 30).toISOString();
    const quotes = [{ id: 'q', title: 'Juniper Lane', updatedAt, options: [], demo: false }];
    const page = await fixture<StartPage>(html`<start-page .list=${{ quotes, damaged: [] }}></start-page>`);
    expect(page.renderRoot.querySelector('.day')?.textContent).to.equal('May 31, 2026');
    expect(page.renderRoot.textContent).not.to.match(/\d{4}-\d{2}-\d{2}/);
  });
});
