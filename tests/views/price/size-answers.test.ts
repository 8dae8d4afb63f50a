import { describe, expect, it } from 'vitest';
import { sizeIn } from '../../../src/views/price/size-answers.ts';

const rows = [{ shape: 'rectangle', length: 20, width: 12 }];

describe('a size of 12 × 20 ft', () => {
  it('has its unit apart from its words, in feet and in metres', () => {
    expect(sizeIn('One-car 12 × 20', rows, 'us')).toEqual({ words: 'One-car 12 × 20', unit: 'ft' });
    expect(sizeIn('One-car 12 × 20', rows, 'metric')).toEqual({ words: 'One-car 3.66 × 6.1', unit: 'm' });
  });

  it('has its unit once where the sheet wrote it, and within the words where they go on', () => {
    expect(sizeIn('One-car 12 × 20 ft', rows, 'us')).toEqual({ words: 'One-car 12 × 20', unit: 'ft' });
    expect(sizeIn('One-car 12 × 20 ft', rows, 'metric')).toEqual({ words: 'One-car 3.66 × 6.1', unit: 'm' });
    expect(sizeIn('12 × 20 shed', rows, 'us')).toEqual({ words: '12 × 20 ft shed', unit: '' });
  });

  it('is in metres behind a name that does not say it, and in feet as the sheet has it', () => {
    expect(sizeIn('One-car', rows, 'us')).toEqual({ words: 'One-car', unit: '' });
    expect(sizeIn('One-car', rows, 'metric')).toEqual({ words: 'One-car (6.1 × 3.66 m)', unit: '' });
  });

  it('takes no figures for sides that are not its own', () => {
    expect(sizeIn('Row 2 × 3', rows, 'us')).toEqual({ words: 'Row 2 × 3', unit: '' });
    expect(sizeIn('two 9 ft doors', [{ width: 9 }, { width: 9 }], 'metric')).toEqual({
      words: 'two 2.74 m doors',
      unit: '',
    });
  });
});
