package lumber

import "example.org/floewright/lumber/measure"

// at returns a place in the edition of the standard that the library follows.
func at(locator string, st measure.Status) *measure.Source {
	return &measure.Source{
		Title:   "National Design Specification for Wood Construction (American Wood Council)",
		Edition: "2018, allowable stress design", Locator: locator, Status: st,
	}
}

// supplement returns a place in the standard's tables of design values.
func supplement(locator string, st measure.Status) *measure.Source {
	return &measure.Source{
		Title:   "NDS Supplement: Design Values for Wood Construction (American Wood Council)",
		Edition: "2018", Locator: locator, Status: st,
	}
}

// Sources of the rules, as far as they were read: equations that are recalled are
// then proved by worked examples and span tables. Read as quoted: CL, CP, the
// slenderness limit of 50 and bearing in course notes and a commentary, 3.9.1 and
// 3.9.2 in a handbook (Civil Engineering Formulas, p. 173).
var (
	srcCD      = at("Table 2.3.2", measure.Quoted)
	srcCM      = supplement("Tables 4A and 4B, wet service factor", measure.Quoted)
	srcCMTimb  = supplement("Table 4D, wet service factor", measure.Quoted)
	srcCt      = at("Table 2.3.3", measure.Memory)
	srcCF      = supplement("Table 4A, size factor", measure.Quoted)
	srcCFPine  = supplement("Table 4B, size adjustment", measure.Memory)
	srcCFTimb  = at("4.3.6, equation 4.3-1", measure.Quoted)
	srcCfu     = supplement("Tables 4A and 4B, flat use factor", measure.Memory)
	srcCfuTimb = supplement("Table 4D, flat use of beams and stringers", measure.Memory)
	srcCi      = at("Table 4.3.8", measure.Memory)
	srcCr      = at("4.3.9", measure.Quoted)
	srcCb      = at("3.10.4, equation 3.10-2", measure.Quoted)
	srcCL      = at("3.3.3, equation 3.3-6", measure.Quoted)
	srcCP      = at("3.7.1, equation 3.7-1", measure.Quoted)
	srcBending = at("3.3.2", measure.Memory)
	srcShear   = at("3.4.2, equation 3.4-2", measure.Quoted)
	srcBearing = at("3.10.2", measure.Quoted)
	srcTension = at("3.8.1", measure.Memory)
	srcColumn  = at("3.6.3", measure.Memory)
	srcBoth    = at("3.9.1 and 3.9.2, equations 3.9-1 to 3.9-3", measure.Quoted)
	srcCreep   = at("3.5.2, equation 3.5-1", measure.Quoted)
	srcNotch   = at("3.4.3.2, equations 3.4-3 and 3.4-5", measure.Quoted)
	srcNotched = at("4.4.3", measure.Memory)
	srcJoint   = at("3.4.3.3, equations 3.4-6 and 3.4-7", measure.Memory)
	srcPaired  = &measure.Source{
		Title: "International Residential Code", Edition: "2018",
		Locator: "Table R507.5, inferred from its two-ply rows", Status: measure.OwnChoice,
	}
)
