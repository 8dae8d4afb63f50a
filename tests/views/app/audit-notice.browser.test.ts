import { expect, fixture, html } from '@open-wc/testing';
import type { AuditNotice } from '../../../src/views/app/audit-notice.ts';
import '../../../src/views/app/audit-notice.ts';

const faults = [
  'Full flake: price is $4,325.00 on this page and $4,350.00 when worked out again.',
  'Full flake: tax is $312.10 on this page and $314.00 when worked out again.',
];

async function shown(found: readonly string[], owner: boolean): Promise<AuditNotice> {
  return fixture<AuditNotice>(html`<audit-notice .faults=${found} ?owner=${owner}></audit-notice>`);
}

describe('the notice of a fault of the program', () => {
  it('is not there while both ways come to the same', async () => {
    const notice = await shown([], true);
    expect(notice.renderRoot.querySelector('[role=alert]')).to.equal(null);
    expect(notice.renderRoot.textContent.trim()).to.equal('');
  });

  it('tells the owner each cell with both values', async () => {
    const notice = await shown(faults, true);
    const told = [...notice.renderRoot.querySelectorAll('[role=alert] li')].map((item) => item.textContent);
    expect(told).to.deep.equal(faults);
    await expect(notice).to.be.accessible();
  });

  it('tells a customer that the price waits, and no number', async () => {
    const notice = await shown(faults, false);
    const alert = notice.renderRoot.querySelector('[role=alert]')?.textContent ?? '';
    expect(alert).to.contain('Please do not rely on a price here');
    expect(alert).not.to.match(/\d/);
    await expect(notice).to.be.accessible();
  });
});
