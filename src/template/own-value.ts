/** A property of an object that came from a file: what the object only inherits (`constructor`) is none of it. */
export function ownValue<T>(record: Readonly<Record<string, T>>, name: string): T | undefined {
  return Object.hasOwn(record, name) ? record[name] : undefined;
}
