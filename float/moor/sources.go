package moor

import (
	"math"

	"example.org/floewright/lumber/measure"
)

// src names a source in one line.
func src(title, edition, locator string, st measure.Status) *measure.Source {
	return &measure.Source{Title: title, Edition: edition, Locator: locator, Status: st}
}

const (
	ufcMooring = "UFC 4-159-03, Moorings"
	ufcPiers   = "UFC 4-152-01, Piers and wharves"
	cem        = "Coastal Engineering Manual, EM 1110-2-1100"
	spm        = "Shore Protection Manual"
	navfac     = "NAVFAC DM-7.02, Foundations and earth structures"
)

// Sources of the formulas and limits.
var (
	srcStatics = src("Statics", "", "balance of forces", measure.Exact)
	srcOwn     = src("This library", "", "a cautious choice", measure.OwnChoice)
	srcUser    = src("The holding given by the user", "", "", measure.OwnChoice)
	srcSense   = src("Sense of the quantity", "", "", measure.Exact)
)

// Ranges that the sense of a quantity sets, with bounds far past anything on a
// lake: they keep the formulas inside floating point.
var (
	positiveLength   = measure.Range{Kind: measure.Length, Lo: 1e-6, Hi: 1e5, Source: srcSense}
	lengthOrZero     = measure.Range{Kind: measure.Length, Lo: 0, Hi: 1e5, Source: srcSense}
	anyLength        = measure.Range{Kind: measure.Length, Lo: -1e5, Hi: 1e5, Source: srcSense}
	forceOrZero      = measure.Range{Kind: measure.Force, Lo: 0, Hi: 1e10, Source: srcSense}
	anyForce         = measure.Range{Kind: measure.Force, Lo: -1e10, Hi: 1e10, Source: srcSense}
	anyPull          = measure.Range{Kind: measure.Force, Lo: -1e25, Hi: 1e25, Source: srcSense} // of a state once found
	anyMoment        = measure.Range{Kind: measure.Moment, Lo: -1e12, Hi: 1e12, Source: srcSense}
	massOrZero       = measure.Range{Kind: measure.Mass, Lo: 0, Hi: 1e9, Source: srcSense}
	positiveMass     = measure.Range{Kind: measure.Mass, Lo: 0, Hi: 1e9, OpenLo: true, Source: srcSense}
	areaOrZero       = measure.Range{Kind: measure.Area, Lo: 0, Hi: 1e5, Source: srcSense}
	anyAngle         = measure.Range{Kind: measure.Angle, Lo: -1e3, Hi: 1e3, Source: srcSense}
	steepness        = measure.Range{Kind: measure.Angle, Lo: 0, Hi: math.Pi / 2, OpenHi: true, Source: srcSense}
	densityRange     = measure.Range{Kind: measure.Density, Lo: 0, Hi: 3e4, OpenLo: true, Source: srcSense}
	speedOrZero      = measure.Range{Kind: measure.Speed, Lo: 0, Hi: 100, Source: srcSense}
	growing          = measure.Range{Kind: measure.Time, Lo: 0, Hi: 1e7, Source: srcSense}
	positiveTime     = measure.Range{Kind: measure.Time, Lo: 0, Hi: 1e7, OpenLo: true, Source: srcSense}
	positiveSpring   = measure.Range{Kind: measure.LineLoad, Lo: 0, Hi: 1e12, OpenLo: true, Source: srcSense}
	springOrZero     = measure.Range{Kind: measure.LineLoad, Lo: 0, Hi: 1e12, Source: srcSense}
	coefficientRange = measure.Range{Kind: measure.Ratio, Lo: 0, Hi: 1e3, Source: srcSense}
	gravityRange     = measure.Range{Kind: measure.Ratio, Lo: 9.7, Hi: 9.9, Source: srcSense}
)

// unknown returns the error of an input that nobody described.
func unknown(field, want string) error {
	return &measure.Error{Field: field, Class: measure.ErrUnknown, Want: want}
}

// nothingOr checks a number of which 0 means that nobody gave one.
func nothingOr(r measure.Range, field string, x float64) error {
	if x == 0 {
		return nil
	}
	return r.Check(field, x)
}

// first returns the first error of a list.
func first(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}
