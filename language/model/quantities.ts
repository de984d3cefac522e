import type Fraction from 'fraction.js'

/** Exact rational: fraction.js over BigInt, so that 57.5 % of 100 kg is 57.5 kg and nothing else. */
export type Exact = Fraction

export type Unit = 'kg' | 'lb'

/** A mass in the unit it was written in. A 45 lb bar stays 45 lb: it is not 20 kg. */
export interface Mass {
	readonly amount: Exact
	readonly unit: Unit
}

/** Whole numbers from–to, both ends included; equal ends where one number is written. */
export interface CountRange {
	readonly from: number
	readonly to: number
}

/** Exact numbers from–to, both ends included; equal ends where one number is written. */
export interface ExactRange {
	readonly from: Exact
	readonly to: Exact
}

/** A calendar date without a time zone, ISO 8601 `YYYY-MM-DD`: dates compare as strings. */
export type CalendarDate = string

export const weekdays = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'] as const
export type Weekday = (typeof weekdays)[number]

/** In the order of the day; what has no time of its own stands between the two. */
export const partsOfDay = ['morning', 'evening'] as const
export type PartOfDay = (typeof partsOfDay)[number]
