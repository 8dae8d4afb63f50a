import type { ReactiveController, ReactiveControllerHost } from 'lit';

/** Resolves two frames from now, when all that is on the page has been laid out. */
export async function laidOut(): Promise<void> {
  for (let frame = 0; frame < 2; frame += 1) await new Promise((next) => requestAnimationFrame(next));
}

/** Marks its element as `settled` once it has been laid out: the browser knows then how high each of its parts is. */
export class Settled implements ReactiveController {
  private readonly host: ReactiveControllerHost & HTMLElement;

  constructor(host: ReactiveControllerHost & HTMLElement) {
    this.host = host;
    host.addController(this);
  }

  hostConnected(): void {
    void laidOut().then(() => this.host.toggleAttribute('settled', true));
  }
}
