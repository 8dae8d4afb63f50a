import { html, LitElement, type TemplateResult } from 'lit';
import { customElement, property, state } from 'lit/decorators.js';
import { formatForTyping } from '../../../units/format.ts';
import { one, parseUnit, type Unit } from '../../../units/unit.ts';
import '../../parts/number-field.ts';
import { sharedStyles } from '../../parts/shared.styles.ts';
import type { EntryDetail } from '../../parts/typed-entry.ts';
import { chooserStyles } from './chooser.styles.ts';
import { type CrewSetting, type CrewSettings, settingFault, usualSettings } from './crew-settings.ts';

interface CrewEntry {
  readonly name: CrewSetting;
  readonly label: string;
  readonly unit: string;
  readonly suffix: string;
  readonly hint: string;
}

const entries: readonly CrewEntry[] = [
  { name: 'travel', label: 'Drive between the two', unit: 'h', suffix: 'h', hint: 'From one floor to the other.' },
  {
    name: 'grinders',
    label: 'Grinders',
    unit: '1',
    suffix: '',
    hint: 'One stays where it is until all grinding there is done.',
  },
  { name: 'shift', label: 'The day is at most', unit: 'h', suffix: 'h', hint: 'From shop to shop.' },
  { name: 'slack', label: 'Left to spare', unit: 'h', suffix: 'h', hint: 'Everything may run late by so much.' },
];

/**
 * What two jobs on a day are judged by.
 *
 * @fires settings-changed - all of them, one changed
 */
@customElement('crew-entries')
export class CrewEntries extends LitElement {
  static override styles = [sharedStyles, chooserStyles];

  @property({ attribute: false }) settings: CrewSettings = usualSettings;

  @state() private refused: { readonly name: CrewSetting; readonly reason: string } | undefined;

  override render(): TemplateResult {
    return html`<div class="choices">${entries.map((entry) => this.entry(entry))}</div>`;
  }

  private entry({ name, label, unit, suffix, hint }: CrewEntry): TemplateResult {
    return html`<div class="entry">
      <span aria-hidden="true">${label}</span>
      <number-field
        label=${label}
        .unit=${unitOf(unit)}
        suffix=${suffix}
        hint=${hint}
        text=${formatForTyping(this.settings[name], unitOf(unit))}
        refusal=${this.refused?.name === name ? this.refused.reason : ''}
        @entered=${(event: CustomEvent<EntryDetail>) => this.enter(name, Number(event.detail.value))}
      ></number-field>
    </div>`;
  }

  private enter(name: CrewSetting, value: number): void {
    const reason = settingFault(name, value);
    this.refused = reason === undefined ? undefined : { name, reason };
    if (reason !== undefined) return;
    const detail: CrewSettings = { ...this.settings, [name]: value };
    this.dispatchEvent(new CustomEvent<CrewSettings>('settings-changed', { detail }));
  }
}

function unitOf(text: string): Unit {
  const parsed = parseUnit(text);
  return parsed.kind === 'unit' ? parsed.unit : one;
}

declare global {
  interface HTMLElementTagNameMap {
    'crew-entries': CrewEntries;
  }
}
