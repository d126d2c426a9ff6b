package lumber

import (
	"slices"
	"strconv"
	"sync"

	"example.org/floewright/lumber/measure"
)

var srcShrink = &measure.Source{
	Title: "Forest Products Laboratory, Research Paper FPL-RP-489", Locator: "shrinkage of lumber from green", Status: measure.Read,
}

// green is the moisture content from which lumber no longer swells by the two lines
// of [Shrinkage]: the width line meets zero at 28.05 %, the other at 27.97 %. Beyond
// wettest no wood holds water; a number in percent lies there.
const (
	green   = 0.281
	wettest = 3.0
)

var drier = measure.Range{Kind: measure.Percent, Lo: 0.08, Hi: 0.19, Source: srcShrink}

// Shrinkage returns how much a piece has shrunk from green at a moisture content
// m, a share of the dry weight, as shares of its green width and thickness:
//
//	width 0.06031 - 0.215 m,  thickness 0.05062 - 0.181 m
//
// for 0.08 to 0.19; 0 from 0.281 to 3, where wood is green; between the two there is
// no answer. An average of softwood lumber. Lengthwise it is a tenth or two of a
// percent (from memory) and not counted. FPL-RP-489. Within 1.2 units in the last
// place of the shrinkage at 0 %.
// Worst at (0.1114), ordered as in testdata/accuracy.csv.
func Shrinkage(m float64) (width, thickness float64, err error) {
	if m >= green && m <= wettest {
		return 0, 0, nil
	}
	if !drier.Has(m) {
		return 0, 0, &measure.Error{
			Field: "moisture content", Kind: measure.Percent, Value: m, Range: drier, Class: measure.ErrRange,
			Want: "8 % to 19 %, or 28.1 % to 300 % for green",
		}
	}
	return 0.06031 - float64(0.215*m), 0.05062 - float64(0.181*m), nil
}

// Gap returns the gap, m, between deck boards of a width (m, as measured when
// laid) that were laid at one moisture content with a gap (m) and have come to
// another, both shares of the dry weight, by [Shrinkage]: it opens where they dry and closes where they swell, and is
// negative where they press on each other and must buckle or lift.
// Within 0.7 units in the last place of the gap and of the shrinkage from 0 %.
// Worst at (0.1958, 0.1027, 0.004725, 0.09907), ordered as in testdata/accuracy.csv.
func Gap(width, laid, gap, now float64) (float64, error) {
	if err := (Section{Width: width, Depth: width}).check(); err != nil {
		return 0, err
	}
	if err := (measure.Range{Kind: measure.Length, Hi: 0.1}).Check("gap", gap); err != nil {
		return 0, err
	}
	before, _, err := Shrinkage(laid)
	if err != nil {
		return 0, err
	}
	after, _, err := Shrinkage(now)
	if err != nil {
		return 0, err
	}
	full := width / (1 - before)
	return gap + float64(full*(after-before)), nil
}

// A Tree is a species of wood, not of the trade's groups, and how it shrinks and
// holds water.
type Tree struct {
	Name                           string
	Radial, Tangential, Volumetric Value // green to oven dry, percent; Unit 0.01
	Basic                          Value // specific gravity on green volume; Unit 1
	Heartwood, Sapwood             Value // moisture when green, percent; none where not listed
}

// Trees returns the table of species. Wood Handbook, Tables 4-1 and 4-3.
func Trees() []Tree { return slices.Clone(embedded(trees())) }

var trees = sync.OnceValues(func() ([]Tree, error) {
	lines, err := readTable("shrinkage")
	if err != nil {
		return nil, err
	}
	var out []Tree
	for _, r := range lines {
		st, err := statusOf(r["status"])
		if err != nil {
			return nil, err
		}
		stG, err := statusOf(r["status_basic"])
		if err != nil {
			return nil, err
		}
		tree := Tree{Name: r["species"]}
		source := func(table string, st measure.Status) *measure.Source {
			return &measure.Source{
				Title: "Wood Handbook (Forest Products Laboratory, FPL-GTR-190)", Edition: "2010",
				Locator: table + ", " + tree.Name, Status: st,
			}
		}
		for _, c := range []struct {
			column string
			to     *Value
			unit   float64
			src    *measure.Source
		}{
			{"radial", &tree.Radial, 0.01, source("Table 4-3", st)},
			{"tangential", &tree.Tangential, 0.01, source("Table 4-3", st)},
			{"volumetric", &tree.Volumetric, 0.01, source("Table 4-3", st)},
			{"basic", &tree.Basic, 1, source("Table 5-3", stG)},
			{"heartwood", &tree.Heartwood, 0.01, source("Table 4-1", st)},
			{"sapwood", &tree.Sapwood, 0.01, source("Table 4-1", st)},
		} {
			if r[c.column] == "" {
				continue
			}
			x, err := strconv.ParseFloat(r[c.column], 64)
			if err != nil {
				return nil, err
			}
			*c.to = Value{Printed: x, Unit: c.unit, Source: c.src}
		}
		out = append(out, tree)
	}
	return out, nil
})

// Shrunk returns how much the tree's wood has shrunk from green across and along the
// rings, as shares, at a moisture content m, a share of the dry weight from 0 to 0.30
// (30 percent): in proportion to what is missing to fibre saturation at 0.30. Wood
// Handbook, chapter 4.
func (t Tree) Shrunk(m float64) (radial, tangential float64, err error) {
	if err := (measure.Range{Kind: measure.Percent, Hi: saturation, Source: srcFull}).Check("moisture content", m); err != nil {
		return 0, 0, err
	}
	for _, v := range []Value{t.Radial, t.Tangential} {
		if err := (measure.Range{Hi: 1, Source: v.Source}).Check("shrinkage from green to dry", v.SI()); err != nil {
			return 0, 0, err
		}
	}
	share := (saturation - m) / saturation
	return t.Radial.SI() * share, t.Tangential.SI() * share, nil
}
