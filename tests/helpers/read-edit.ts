import type { Edit } from '../../src/quote/edit.ts';
import { editSchema } from '../../src/quote/edit-schema.ts';
import { type ReadValue, readBySchema } from '../../src/quote/read-by-schema.ts';

/** Whether an edit has the shape and the limits that a log may keep. */
export function readEdit(value: unknown): ReadValue<Edit> {
  return readBySchema(editSchema, value);
}
