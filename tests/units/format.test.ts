import { describe, expect, it } from 'vitest';
import {
  formatAngle,
  formatLength,
  formatMass,
  formatShopSize,
  formatSpeed,
  formatTorque,
} from '../../src/units/format.ts';

describe('numbers as reports show them', () => {
  it('shows lengths in mm, or in inches when asked (1 in = 25.4 mm exactly)', () => {
    expect(formatLength(57)).toBe('57.000 mm');
    expect(formatLength(57.15, 'in')).toBe('2.2500 in');
    expect(formatLength(57.26, 'mm', 1)).toBe('57.3 mm');
    expect(formatLength(-0.0001)).toBe('0.000 mm');
  });

  it('shows sizes of screws as a shop asks for them (1 in = 25.4 mm exactly)', () => {
    expect(formatShopSize('M10', 25)).toBe('25');
    expect(formatShopSize('M10x1.5', 17.5)).toBe('17.5');
    expect(formatShopSize('5/16-24 UNF', 22.225)).toBe('0.875 in');
    expect(formatShopSize('3/8-24 UNF', 50.8)).toBe('2 in');
  });

  it('shows the other quantities with their units', () => {
    expect(formatTorque(480)).toBe('480.0 N.m');
    // NIST SP 811: 1 lbf.ft = 1.355 818 N.m
    expect(formatTorque(135.58179483314004, 'in')).toBe('100.0 lbf.ft');
    expect(formatSpeed(4200)).toBe('4200 rpm');
    expect(formatSpeed(4.2)).toBe('4.2 rpm');
    expect(formatAngle(12.5)).toBe('12.500 deg');
    expect(formatMass(840)).toBe('840.0 g');
    expect(formatMass(8400)).toBe('8.400 kg');
    // 1 lb = 453.59237 g, international yard and pound agreement
    expect(formatMass(453.59237, 'in')).toBe('1.000 lb');
    expect(formatMass(226.796185, 'in')).toBe('8.00 oz');
  });
});
