import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB, type StoreNames } from 'idb';
import type { SheetHash } from '../quote/quote-document.ts';
import { fault, faultOfError, messages, type StoreFault } from './messages.ts';

interface Shape extends DBSchema {
  /** The whole quote after its last change, under its id. What is read is not trusted. */
  heads: { key: string; value: unknown };
  /** One entry of a quote's log, under the quote's id and the entry's number. */
  logs: { key: [quote: string, seq: number]; value: unknown };
  /** The JSON text of a sheet under its hash: written once, never changed. */
  sheets: { key: SheetHash; value: string };
}

type Stores = StoreNames<Shape>[];
export type Writing = IDBPTransaction<Shape, Stores, 'readwrite'>;
export type Reading = IDBPTransaction<Shape, Stores, 'readonly'>;
type Connection = IDBPDatabase<Shape>;

const version = 1;
const everyStore: Stores = ['heads', 'logs', 'sheets'];

/** The database, opened when it is needed and again when the browser has closed it. */
export class Database {
  private readonly name: string;
  private connection: Connection | undefined;
  private opening: Promise<Connection | StoreFault> | undefined;

  constructor(name: string) {
    this.name = name;
  }

  async open(): Promise<Connection | StoreFault> {
    if (this.connection !== undefined) return this.connection;
    this.opening ??= this.reach();
    const opened = await this.opening;
    this.opening = undefined;
    return opened;
  }

  close(): void {
    this.connection?.close();
    this.connection = undefined;
  }

  /** What `body` reads in one transaction. */
  async read<T>(body: (reading: Reading) => Promise<T>): Promise<T | StoreFault> {
    const connection = await this.open();
    if ('kind' in connection) return connection;
    try {
      return await body(connection.transaction(everyStore, 'readonly'));
    } catch (error) {
      return this.afterError(error);
    }
  }

  /**
   * Writes all that `body` writes or, when it gives a fault, nothing. Undefined only after the transaction's complete
   * event, and with strict durability, so that the bytes have left for the disk.
   */
  async write(body: (writing: Writing) => Promise<StoreFault | undefined>): Promise<StoreFault | undefined> {
    const connection = await this.open();
    if ('kind' in connection) return connection;
    let writing: Writing | undefined;
    try {
      writing = connection.transaction(everyStore, 'readwrite', { durability: 'strict' });
      // Heard here too, since `body` may fail first and leave it unheard.
      writing.done.catch(() => undefined);
      const refused = await body(writing);
      if (refused === undefined) await writing.done;
      else writing.abort();
      return refused;
    } catch (error) {
      abandon(writing);
      return this.afterError(error);
    }
  }

  private async reach(): Promise<Connection | StoreFault> {
    if (typeof indexedDB === 'undefined') return fault(messages.noStorage);
    try {
      return await this.connect();
    } catch (error) {
      // Private windows of some browsers have the interface but refuse to open anything.
      const refused = error instanceof DOMException && error.name === 'InvalidStateError';
      return refused ? fault(messages.noStorage) : faultOfError(error);
    }
  }

  private connect(): Promise<Connection | StoreFault> {
    return new Promise((resolve, reject) => {
      const opening = openDB<Shape>(this.name, version, {
        upgrade: (connection) => {
          for (const store of everyStore) connection.createObjectStore(store);
        },
        blocked: () => resolve(fault(messages.blocked)),
        // A newer version in another tab waits for this one to let go; the next use here tells of it.
        blocking: () => this.close(),
        terminated: () => {
          this.connection = undefined;
        },
      });
      opening.then((connection) => {
        this.connection = connection;
        resolve(connection);
      }, reject);
    });
  }

  private afterError(error: unknown): StoreFault {
    // A connection that the browser closed is opened again at the next use.
    if (error instanceof DOMException && error.name === 'InvalidStateError') this.close();
    return faultOfError(error);
  }
}

function abandon(writing: Writing | undefined): void {
  try {
    writing?.abort();
  } catch {
    // It has ended by itself already, which is what was wanted.
  }
}
