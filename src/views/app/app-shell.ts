import { html, LitElement, nothing, type PropertyValues, type TemplateResult } from 'lit';
import { customElement, property, query, state } from 'lit/decorators.js';
import type { Edit } from '../../quote/edit.ts';
import type { OpenQuote, QuoteDesk } from '../../session/quote-desk.ts';
import type { DispatchResult, QuoteSession } from '../../session/quote-session.ts';
import type { QuoteList } from '../../storage/quote-store.ts';
import type { Measures } from '../../units/measures.ts';
import '../compare/compare-face.ts';
import '../costing/costing-face.ts';
import '../day/day-place.ts';
import '../parts/hold-button.ts';
import { sharedStyles } from '../parts/shared.styles.ts';
import { systemsPlace } from '../price/price-face.ts';
import { appShellStyles } from './app-shell.styles.ts';
import './audit-notice.ts';
import { EditRefusals } from './edit-refusals.ts';
import { focusFace } from './focus-face.ts';
import { keepMeasures, readMeasures } from './measures-choice.ts';
import './measures-picker.ts';
import { newQuoteAt } from './new-quote-at.ts';
import { offeredSystems, switchedSystem } from './offered-systems.ts';
import { besideFace, type Face, faceTitles, isOwners, type Route, readRoute, writeRoute } from './route.ts';
import './quote-tools.ts';
import './start-page.ts';
import './status-region.ts';
import type { StatusRegion } from './status-region.ts';
import './theme-picker.ts';
import './thumb-bar.ts';
import { toldOptions } from './told-options.ts';

/**
 * The app: the list of quotes or the faces of one quote. It holds what no face may lose: which quote is open, whether the
 * owner's view is on, and the one status region for those who listen.
 *
 * @fires quote-shown - the numbers of a quote stand on the page
 */
@customElement('app-shell')
export class AppShell extends LitElement {
  static override styles = [sharedStyles, appShellStyles];

  @property({ attribute: false }) desk: QuoteDesk | undefined;
  /** Time and ids for new quotes. */
  @property({ attribute: false }) clock: () => string = () => new Date().toISOString();

  @state() private route: Route = readRoute(location.hash);
  @state() private open: OpenQuote | undefined;
  @state() private list: QuoteList | undefined;
  @state() private owner = false;
  @state() private measures: Measures = readMeasures();

  @query('status-region') private readonly statusRegion: StatusRegion | null | undefined;

  private readonly refusals = new EditRefusals(() => this.requestUpdate());
  private unsubscribe: (() => void) | undefined;

  constructor() {
    super();
    this.addEventListener('told', ({ detail }) => this.statusRegion?.tell(detail));
    this.addEventListener('refused-given-up', () => this.refusals.end());
  }

  override connectedCallback(): void {
    super.connectedCallback();
    window.addEventListener('hashchange', this.onHash);
    window.addEventListener('keydown', this.onKey);
    void this.follow();
  }

  override disconnectedCallback(): void {
    super.disconnectedCallback();
    window.removeEventListener('hashchange', this.onHash);
    window.removeEventListener('keydown', this.onKey);
    this.close();
  }

  protected override updated(changed: PropertyValues): void {
    if (changed.get('owner') !== undefined) focusFace(this.renderRoot);
    if (this.open !== undefined && this.route.kind === 'quote') this.dispatchEvent(new Event('quote-shown'));
  }

  override render(): TemplateResult {
    const session = this.route.kind === 'quote' ? this.open?.session : undefined;
    return html`
      <header>
        <a class=${session === undefined ? 'home' : 'home back'} href="#/"><span>Spreadrate</span></a>
        ${
          session === undefined
            ? nothing
            : html`<quote-tools
                .session=${session}
                measures=${this.measures}
                @edit=${(event: CustomEvent<Edit>) => this.dispatch(event.detail)}
                @stepped=${(event: CustomEvent<DispatchResult>) => this.refusals.take(event.detail)}
              ></quote-tools>`
        }
      </header>
      ${session === undefined || this.route.kind === 'start' ? nothing : this.faceLinks(this.route)}
      <audit-notice .session=${session} .faults=${session?.faults ?? []} ?owner=${this.owner}></audit-notice>
      ${this.trouble(session)} ${this.readOnly(session)} ${this.body(session)}
      <div class="choices">
        <theme-picker></theme-picker>
        <measures-picker measures=${this.measures} @measures-chosen=${this.onMeasures}></measures-picker>
      </div>
      ${
        session === undefined || this.route.kind === 'start'
          ? nothing
          : html`<thumb-bar .session=${session} next=${writeRoute({ ...this.route, face: besideFace(this.route.face) })} nextTitle=${faceTitles[besideFace(this.route.face)]}></thumb-bar>`
      }
      <status-region></status-region>
    `;
  }

  private faceLinks(route: Extract<Route, { kind: 'quote' }>): TemplateResult {
    const link = (face: Face): TemplateResult => html`<a
      href=${writeRoute({ ...route, face })}
      aria-current=${route.face === face ? 'page' : 'false'}
      >${faceTitles[face]}</a
    >`;
    return html`<nav aria-label="Faces of the quote">
      ${link('price')} ${link('side-by-side')} ${this.owner ? html`${link('costing')} ${link('day')}` : nothing}
      <span class="owner">
        ${
          this.owner
            ? html`<button class="plain leave" type="button" @click=${this.onLeaveOwner}>Customer’s view</button>`
            : html`<hold-button label="Adjust" hint="Hold for a second: what is behind it is not for a customer’s eyes" @held=${this.onOwner}></hold-button>`
        }
      </span>
    </nav>`;
  }

  private body(session: QuoteSession | undefined): TemplateResult {
    const { route, desk } = this;
    if (desk === undefined) return html`<p>Opening …</p>`;
    if (route.kind === 'start') {
      return html`<start-page
        .list=${this.list}
        trouble=${desk.unkept === undefined ? '' : `Quotes cannot be kept in this browser: ${desk.unkept} They last as long as this page.`}
        @quote-wanted=${this.onNew}
        @quote-unwanted=${(event: CustomEvent<string>) => this.removeQuote(event.detail)}
      ></start-page>`;
    }
    if (session === undefined) return html`<main><p>Opening the quote …</p></main>`;
    const face = isOwners(route.face) && !this.owner ? 'price' : route.face;
    switch (face) {
      case 'price':
        return html`<price-face
          .session=${session}
          .systems=${offeredSystems(session.quote, desk)}
          ?owner=${this.owner}
          measures=${this.measures}
          .refusals=${this.refusals.atPlaces}
          @edit=${(event: CustomEvent<Edit>) => this.dispatch(event.detail)}
          @system-wanted=${(event: CustomEvent<string>) => this.switchSystem(event.detail)}
        ></price-face>`;
      case 'side-by-side':
        return html`<compare-face .session=${session} ?owner=${this.owner} measures=${this.measures}></compare-face>`;
      case 'costing':
        return html`<costing-face .session=${session} .priceList=${desk.priceList} measures=${this.measures}></costing-face>`;
      case 'day':
        return html`<day-place .session=${session} .quotes=${desk} measures=${this.measures}></day-place>`;
      default:
        return face satisfies never;
    }
  }

  private trouble(session: QuoteSession | undefined): TemplateResult | typeof nothing {
    const { above } = this.refusals;
    // That another tab has the quote is said below, with the way to change it here.
    return above === '' || above === session?.readOnly ? nothing : html`<p class="trouble" role="alert">${above}</p>`;
  }

  private readOnly(session: QuoteSession | undefined): TemplateResult | typeof nothing {
    if (session?.readOnly === undefined) return nothing;
    return html`<p class="trouble elsewhere" role="alert">
      ${session.readOnly}
      ${
        this.open?.shared === undefined
          ? nothing
          : html`<button class="plain" type="button" @click=${() => this.open?.shared?.takeOver()}>Change it here</button>`
      }
    </p>`;
  }

  private async switchSystem(id: string): Promise<void> {
    const { desk } = this;
    const session = this.open?.session;
    if (desk === undefined || session === undefined) return;
    const edit = await switchedSystem(session, desk, id);
    // Another quote may be open by now.
    if (edit === undefined || this.open?.session !== session) return;
    if (edit.kind === 'fault') this.refusals.refuse(edit.reason, systemsPlace);
    else this.dispatch(edit);
  }

  private dispatch(edit: Edit): void {
    const session = this.open?.session;
    if (session === undefined) return;
    this.refusals.dispatch(session, edit, this.measures);
    // It stands on the page already: those who listen hear it again.
    if (session.readOnly !== undefined) this.statusRegion?.tell(session.readOnly);
  }

  private readonly onHash = (): void => {
    this.route = readRoute(location.hash);
    scrollTo(0, 0);
    void this.follow();
  };

  /** Undo and redo by key, except where a field has its own. */
  private readonly onKey = (event: KeyboardEvent): void => {
    const session = this.open?.session;
    const inField = event.composedPath()[0] instanceof HTMLInputElement;
    if (session === undefined || inField || !(event.ctrlKey || event.metaKey) || event.key.toLowerCase() !== 'z')
      return;
    event.preventDefault();
    this.refusals.take(event.shiftKey ? session.redo() : session.undo());
  };

  /** Opens what the address names. The last call wins: an answer that comes after another turn is dropped. */
  private async follow(): Promise<void> {
    const { route, desk } = this;
    if (desk === undefined) return;
    if (route.kind === 'start') {
      this.close();
      this.list = undefined;
      const list = await desk.list();
      if (this.route !== route) return;
      if (list.kind === 'list') this.list = list;
      else this.refusals.refuse(list.reason);
      return;
    }
    if (this.open?.session.quote.id === route.id) return;
    this.close();
    const opened = await desk.open(route.id);
    if (this.route.kind !== 'quote' || this.route.id !== route.id) return;
    if (opened.kind === 'fault') {
      this.refusals.refuse(opened.reason);
      location.hash = '#/';
      return;
    }
    if (opened.notice === undefined) this.refusals.end();
    else this.refusals.refuse(opened.notice);
    this.open = opened;
    this.statusRegion?.follow(() => toldOptions(opened.session, this.measures));
    this.unsubscribe = opened.session.subscribe((changes) => this.onChanged(changes.length > 0));
  }

  private close(): void {
    this.unsubscribe?.();
    this.open?.close();
    this.statusRegion?.forget();
    this.open = undefined;
    this.owner = false;
  }

  private onChanged(numbers: boolean): void {
    this.requestUpdate();
    if (this.open !== undefined) this.refusals.follow(this.open.session, numbers);
    if (numbers) this.statusRegion?.optionsMoved();
  }

  private readonly onNew = async (): Promise<void> => {
    const at = this.clock();
    const wanted = newQuoteAt(at);
    const made = await this.desk?.make(wanted, at);
    if (made === undefined) return;
    if ('kind' in made) this.refusals.refuse(made.reason);
    else location.hash = writeRoute({ kind: 'quote', id: wanted.id, face: 'price' });
  };

  private async removeQuote(id: string): Promise<void> {
    const refused = await this.desk?.remove(id);
    if (refused !== undefined) this.refusals.refuse(refused.reason);
    if (this.route.kind === 'start') await this.follow();
  }

  private onMeasures(event: CustomEvent<Measures>): void {
    this.measures = event.detail;
    keepMeasures(event.detail);
  }

  private onOwner(): void {
    this.owner = true;
  }

  private readonly onLeaveOwner = (): void => {
    this.owner = false;
    const { route } = this;
    if (route.kind === 'quote' && isOwners(route.face)) location.hash = writeRoute({ ...route, face: 'price' });
  };
}

declare global {
  interface HTMLElementTagNameMap {
    'app-shell': AppShell;
  }
}
