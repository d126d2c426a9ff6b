package action

import (
	"sort"
	"strings"

	"example.org/floewright/lumber/measure"
)

// zabilansky gives the bond of ice on wooden piles and the sizes it covers.
var zabilansky = &measure.Source{
	Title:   "L. J. Zabilansky, Vertical ice forces and aspect ratio of pile diameter vs ice thickness, 14th IAHR ice symposium",
	Edition: "1998", Locator: "abstract: 420 to 100 kPa as diameter over thickness runs from 0.5 to 6.5, wood, fresh ice", Status: measure.Read,
}

// pileRatio is where the bond on wood was measured.
var pileRatio = measure.Range{Lo: 0.5, Hi: 6.5, Source: zabilansky}

// bonds lists the adhesion of ice by material, Pa.
var bonds = map[string]Span{
	"wood": {"bond to wood", 100e3, 420e3, zabilansky},
	"aluminium": {"bond to aluminium", 0.20e6, 0.36e6, &measure.Source{
		Title:   "The effect of ice type on ice adhesion, AIP Advances 9, 055304",
		Edition: "2019", Locator: "abstract: bulk water ice 0.28 ± 0.08 MPa", Status: measure.Read,
	}},
	"steel": {"bond to stainless steel, polished to unpolished", 0.07e6, 1.65e6, &measure.Source{
		Title:  "study of ice on PVC under bending, quoting measurements on stainless steel, 0.07 MPa polished, 1.65 MPa unpolished",
		Status: measure.Quoted,
	}},
}

// unread are materials of drums for which no figure was read.
var unread = map[string]string{
	"polyethylene": "P. Oksanen (VTT, 1982) measured it; his figures were not seen",
	"pvc":          "P. Oksanen (VTT, 1982) measured it; his figures were not seen",
}

// Adhesion returns the strength of the bond of ice to a material, in Pa, with
// its source: "wood", "aluminium", "steel". across is the diameter of the body
// and thickness that of the ice, m. Wood covers 0.5 to 6.5 thicknesses across,
// 420 to 100 kPa; the whole span is given, since only its ends were read. The
// others are small laboratory specimens. For "polyethylene" and "pvc" no figure
// was read: an error of class measure.ErrUnknown.
func Adhesion(material string, across, thickness float64) (Span, error) {
	if err := check("body across", across, sideRange); err != nil {
		return Span{}, err
	}
	if err := check("thickness of the ice", thickness, thickRange); err != nil {
		return Span{}, err
	}
	name := strings.ToLower(strings.TrimSpace(material))
	if why, ok := unread[name]; ok {
		return Span{}, &measure.Error{Field: "bond to " + name, Why: why, Class: measure.ErrUnknown, Want: "a measured strength"}
	}
	s, ok := bonds[name]
	if !ok {
		var names []string
		for n := range bonds {
			names = append(names, n)
		}
		sort.Strings(names)
		return Span{}, &measure.Error{Field: "material", Text: material, Class: measure.ErrName, Want: "one of " + strings.Join(names, ", ")}
	}
	if name == "wood" {
		if err := pileRatio.Check("diameter over thickness of the ice", across/thickness); err != nil {
			return Span{}, err
		}
	}
	return s, nil
}
