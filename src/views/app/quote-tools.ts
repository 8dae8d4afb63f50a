import { css, html, LitElement, nothing, type TemplateResult } from 'lit';
import { customElement, property } from 'lit/decorators.js';
import { live } from 'lit/directives/live.js';
import type { Edit } from '../../quote/edit.ts';
import type { DispatchResult, QuoteSession } from '../../session/quote-session.ts';
import type { Measures } from '../../units/measures.ts';
import { editWords } from '../costing/edit-words.ts';
import { SessionNews } from '../parts/session-news.ts';
import { sharedStyles } from '../parts/shared.styles.ts';

/**
 * A quote's title, what is invented in it, the way back and forward, and whether all of it is saved.
 *
 * @fires edit - another title
 * @fires stepped - what undo or redo came to
 */
@customElement('quote-tools')
export class QuoteTools extends LitElement {
  static override styles = [
    sharedStyles,
    css`
      :host {
        flex: 1;
        display: flex;
        flex-wrap: wrap;
        align-items: center;
        gap: 0.25rem 1rem;
      }

      .title {
        flex: 1 1 10rem;
        min-width: 8rem;
        font-size: var(--large);
        font-weight: 600;
        border-bottom-color: transparent;
        text-overflow: ellipsis;
      }

      .title:hover,
      .title:focus {
        border-bottom-color: var(--rule);
      }

      .demo {
        padding: 0 0.375rem;
        border: 1px dashed var(--rule);
        font-size: var(--small);
      }

      .tools {
        display: flex;
        flex-wrap: wrap;
        gap: 0.5rem;
        align-items: center;
      }

      .saved {
        color: var(--ink-light);
        font-size: var(--small);
      }

      @media (max-width: 52rem) {
        .redo:disabled {
          display: none;
        }
      }
    `,
  ];

  @property({ attribute: false }) session: QuoteSession | undefined;
  @property() measures: Measures = 'us';

  constructor() {
    super();
    new SessionNews(this, 'everything');
  }

  override render(): TemplateResult | typeof nothing {
    const { session } = this;
    if (session === undefined) return nothing;
    const results = session.results(session.quote.options[0]?.id ?? '');
    const [undo, redo] = [session.undoable, session.redoable].map((edit) => editWords(edit, results, this.measures));
    return html`<input class="title" type="text" aria-label="Title of the quote" .value=${live(session.quote.title)} @change=${this.onRetitle} />
      <span class="demo">${session.quote.id === 'demo' ? 'invented firm, floor and prices' : 'invented rates and prices'}</span>
      <div class="tools">
        <button class="plain" type="button" ?disabled=${undo === ''} @click=${() => this.step('undo')}>Undo${undo === '' ? '' : `: ${undo}`}</button>
        <button class="plain redo" type="button" ?disabled=${redo === ''} @click=${() => this.step('redo')}>Redo${redo === '' ? '' : `: ${redo}`}</button>
        <span class="saved">${savedWords(session)}</span>
      </div>`;
  }

  private step(direction: 'undo' | 'redo'): void {
    const result = this.session?.[direction]();
    if (result !== undefined) this.dispatchEvent(new CustomEvent<DispatchResult>('stepped', { detail: result }));
  }

  private onRetitle(event: Event): void {
    const { target } = event;
    if (!(target instanceof HTMLInputElement)) return;
    const title = target.value.trim();
    if (title === '') this.requestUpdate();
    else this.dispatchEvent(new CustomEvent<Edit>('edit', { detail: { kind: 'retitle', title } }));
  }
}

function savedWords({ saved }: QuoteSession): string {
  if (saved.kind === 'saved') return 'saved';
  return saved.kind === 'saving' ? 'saving …' : `not saved: ${saved.reason}`;
}

declare global {
  interface HTMLElementTagNameMap {
    'quote-tools': QuoteTools;
  }
}
