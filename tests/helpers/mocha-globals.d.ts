// What web-test-runner puts into the page of a browser test.
declare function describe(name: string, body: () => void): void;
declare function it(name: string, body: () => void | Promise<void>): void;
declare function beforeEach(body: () => void | Promise<void>): void;
declare function afterEach(body: () => void | Promise<void>): void;
