// Package unit holds the quantities that worksheets deal in, the units people
// use for them, and the conversions between a unit and the SI value inside.
//
// Every worksheet computes in SI: kelvin, pascal absolute, kilogram, metre,
// second. A unit is the way a person writes a value; it never reaches an
// equation. Gauge pressure is a unit of pressure whose zero is the local
// atmosphere, so converting it needs that atmosphere: see Env.
//
// What this package cannot catch: two quantities that share a dimension, such
// as a temperature and a temperature difference, are told apart only because
// the declaration names the right Quantity.
package unit

import (
	"strings"

	"changeout/calc/text"
)

// System is the family of units that a person reads most easily.
type System string

const (
	Either     System = ""   // used in both families, micron for example
	SI         System = "si" // metric
	InchPound  System = "ip" // inch-pound
	pascalInHg        = 3386.389
)

// Datum says where a unit's zero lies.
type Datum int

const (
	Fixed   Datum = iota // zero is the quantity's own zero (plus Offset)
	Gauge                // zero is the local atmosphere, counted upwards
	Suction              // zero is the local atmosphere, counted downwards (inches of mercury vacuum)
)

// Unit is one way to write a quantity: SI = (value + Offset) × Factor, plus
// the local atmosphere for a gauge unit, or subtracted from it for a suction
// unit.
type Unit struct {
	ID       string // what a person types after the number: psig, C, kg/m
	Label    string // what the screen shows: psi gauge, °C
	Factor   float64
	Offset   float64
	Datum    Datum
	System   System
	Decimals int      // decimals shown; Scientific for three significant figures
	Aliases  []string // other spellings accepted, folded to lower case
}

// What a unit's Decimals may ask for besides a count of decimals.
const (
	Scientific = -1 // three significant figures, with powers of ten: leak rates and the like are read so
	Calendar   = -2 // a day of the calendar, written year first: see Date
)

// Quantity is a kind of value with the units it may be written in. The first
// unit is the SI one.
type Quantity struct {
	ID    string
	Name  string // as it stands in a sentence: "a pressure"
	Units []Unit
	// Vague lists unit spellings that leave something open, with the
	// question to ask: psi does not say gauge or absolute.
	Vague []Vague
}

// Vague is a spelling that could mean several units.
type Vague struct {
	ID   string
	Ask  string
	Mean []string // unit ids it could mean
}

// Env is what a conversion needs to know about the site.
type Env struct {
	Atmosphere float64 // local atmospheric pressure, Pa
}

// Calendar reports whether the quantity is a day of the calendar, which is
// typed and shown as a date and not as a number.
func (q *Quantity) Calendar() bool { return q.Units[0].Decimals == Calendar }

// SIUnit returns the quantity's SI unit.
func (q *Quantity) SIUnit() *Unit { return &q.Units[0] }

// Unit returns the unit with that id or alias, or nil. Case is respected first
// (mm and Mm differ), then ignored.
func (q *Quantity) Unit(id string) *Unit {
	for i := range q.Units {
		if q.Units[i].ID == id {
			return &q.Units[i]
		}
	}
	folded := fold(id)
	for i := range q.Units {
		u := &q.Units[i]
		if fold(u.ID) == folded || fold(u.Label) == folded {
			return u
		}
		for _, a := range u.Aliases {
			if a == folded {
				return u
			}
		}
	}
	return nil
}

// VagueUnit returns the entry for a spelling that leaves something open.
func (q *Quantity) VagueUnit(id string) *Vague {
	folded := fold(id)
	for i := range q.Vague {
		if fold(q.Vague[i].ID) == folded {
			return &q.Vague[i]
		}
	}
	return nil
}

func fold(s string) string {
	s = text.Lower(strings.TrimSpace(s))
	s = text.Swap(s, "°", "", "º", "", "μ", "u", "µ", "u", "³", "3", "²", "2", "·", "", " ", "", "\u00a0", "", "\u202f", "")
	return s
}

// ToSI converts a value written in u to SI.
func (u *Unit) ToSI(v float64, env Env) float64 {
	si := (v + u.Offset) * u.Factor
	switch u.Datum {
	case Gauge:
		return env.Atmosphere + si
	case Suction:
		return env.Atmosphere - si
	}
	return si
}

// FromSI converts an SI value to the number shown in u.
func (u *Unit) FromSI(si float64, env Env) float64 {
	switch u.Datum {
	case Gauge:
		si -= env.Atmosphere
	case Suction:
		si = env.Atmosphere - si
	}
	return si/u.Factor - u.Offset
}
