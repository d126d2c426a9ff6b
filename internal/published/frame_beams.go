package published

import "example.org/floewright/frame"

// frameBeams builds the beam of each case of the beam tables from its inputs:
// span L, uniform load w, point load P, and the lengths a, b, c, p of the case.
var frameBeams = map[string]func(in map[string]float64) frame.Beam{
	"SS-UDL":      simple(all),
	"SS-P-MID":    simple(middle),
	"SS-P-ANY":    simple(atA),
	"SS-2P-SYM":   simple(func(in map[string]float64) []frame.Load { return pair(in, in["a"], in["L"]-in["a"]) }),
	"SS-2P-QTR":   simple(quarters),
	"SS-2P-THIRD": simple(func(in map[string]float64) []frame.Load { return pair(in, in["L"]/3, 2*in["L"]/3) }),
	"SS-2P-UNSYM": simple(func(in map[string]float64) []frame.Load { return pair(in, in["a"], in["L"]-in["b"]) }),
	"SS-UDL-PART": simple(func(in map[string]float64) []frame.Load {
		return []frame.Load{frame.Uniform(in["a"], in["a"]+in["b"], in["w"])}
	}),
	"SS-UDL-END": simple(func(in map[string]float64) []frame.Load { return []frame.Load{frame.Uniform(0, in["a"], in["w"])} }),

	"CANT-UDL":   cantilever(all),
	"CANT-P-END": cantilever(func(in map[string]float64) []frame.Load { return []frame.Load{frame.Point(in["L"], in["P"])} }),
	"CANT-P-ANY": cantilever(func(in map[string]float64) []frame.Load { return []frame.Load{frame.Point(in["b"], in["P"])} }),

	"FF-UDL":     ends(true, true, all),
	"FF-P-MID":   ends(true, true, middle),
	"FF-P-ANY":   ends(true, true, atA),
	"PROP-UDL":   ends(false, true, all),
	"PROP-P-MID": ends(false, true, middle),
	"PROP-P-ANY": ends(false, true, atA),

	"OH-UDL-ALL":  overhang(func(in map[string]float64) frame.Load { return frame.Uniform(0, in["L"]+in["a"], in["w"]) }),
	"OH-UDL-OH":   overhang(func(in map[string]float64) frame.Load { return frame.Uniform(in["L"], in["L"]+in["a"], in["w"]) }),
	"OH-P-END":    overhang(func(in map[string]float64) frame.Load { return frame.Point(in["L"]+in["a"], in["P"]) }),
	"OH-UDL-SPAN": overhang(func(in map[string]float64) frame.Load { return frame.Uniform(0, in["L"], in["w"]) }),
	"OH-P-SPAN":   overhang(func(in map[string]float64) frame.Load { return frame.Point(in["p"], in["P"]) }),
	"OH2-UDL": func(in map[string]float64) frame.Beam {
		length := in["L"] + 2*in["a"]
		return frame.Beam{
			Length: length, EI: in["EI"],
			Rests: []frame.Rest{{At: in["a"]}, {At: in["a"] + in["L"]}},
			Loads: []frame.Load{frame.Uniform(0, length, in["w"])},
		}
	},

	"C2-UDL":   equal(2, spansLoaded(0, 1)),
	"C2-UDL-1": equal(2, spansLoaded(0)),
	"C2-P-1":   equal(2, middle),
	"C2-2P":    equal(2, func(in map[string]float64) []frame.Load { return pair(in, in["L"]/2, 1.5*in["L"]) }),
	"C2-P-ANY": equal(2, atA),
	"C2-UNEQ": func(in map[string]float64) frame.Beam {
		return unequal(in["EI"], []float64{in["a"], in["b"]}, []float64{in["w"], in["w"]})
	},
	"C2-UNEQ-PAT": func(in map[string]float64) frame.Beam {
		return unequal(in["EI"], []float64{in["a"], in["b"]}, []float64{in["wa"], in["wb"]})
	},
	"C3-UDL":      equal(3, spansLoaded(0, 1, 2)),
	"C3-UDL-ENDS": equal(3, spansLoaded(0, 2)),
	"C3-UDL-MID":  equal(3, spansLoaded(1)),
	"C3-UDL-2ADJ": equal(3, spansLoaded(0, 1)),
	"C3-UDL-1END": equal(3, spansLoaded(0)),
	"C3-UNEQ": func(in map[string]float64) frame.Beam {
		return unequal(in["EI"], []float64{in["a"], in["b"], in["c"]}, []float64{in["w"], in["w"], in["w"]})
	},
	"C4-UDL": equal(4, spansLoaded(0, 1, 2, 3)),
	"C5-UDL": equal(5, spansLoaded(0, 1, 2, 3, 4)),

	"SH-SS-UDL":   simple(all),
	"SH-SS-MID":   simple(middle),
	"SH-FF-UDL":   ends(true, true, all),
	"SH-FF-MID":   ends(true, true, middle),
	"SH-QTR-LD":   simple(quarters),
	"SH-CANT-UDL": cantilever(all),
}

type frameLoads func(in map[string]float64) []frame.Load

func all(in map[string]float64) []frame.Load {
	return []frame.Load{frame.Uniform(0, in["L"], in["w"])}
}

func middle(in map[string]float64) []frame.Load {
	return []frame.Load{frame.Point(in["L"]/2, in["P"])}
}

func atA(in map[string]float64) []frame.Load {
	return []frame.Load{frame.Point(in["a"], in["P"])}
}

func quarters(in map[string]float64) []frame.Load { return pair(in, in["L"]/4, 3*in["L"]/4) }

func pair(in map[string]float64, x, y float64) []frame.Load {
	return []frame.Load{frame.Point(x, in["P"]), frame.Point(y, in["P"])}
}

func spansLoaded(which ...int) frameLoads {
	return func(in map[string]float64) []frame.Load {
		var loads []frame.Load
		for _, i := range which {
			loads = append(loads, frame.Uniform(float64(i)*in["L"], float64(i+1)*in["L"], in["w"]))
		}
		return loads
	}
}

func simple(loads frameLoads) func(map[string]float64) frame.Beam { return ends(false, false, loads) }

func ends(left, right bool, loads frameLoads) func(map[string]float64) frame.Beam {
	return func(in map[string]float64) frame.Beam {
		return frame.Beam{
			Length: in["L"], EI: in["EI"], GA: in["GA"], Loads: loads(in),
			Rests: []frame.Rest{{At: 0, Clamped: left}, {At: in["L"], Clamped: right}},
		}
	}
}

func cantilever(loads frameLoads) func(map[string]float64) frame.Beam {
	return func(in map[string]float64) frame.Beam {
		return frame.Beam{
			Length: in["L"], EI: in["EI"], GA: in["GA"], Loads: loads(in),
			Rests: []frame.Rest{{At: 0, Clamped: true}},
		}
	}
}

func overhang(load func(map[string]float64) frame.Load) func(map[string]float64) frame.Beam {
	return func(in map[string]float64) frame.Beam {
		return frame.Beam{
			Length: in["L"] + in["a"], EI: in["EI"], Loads: []frame.Load{load(in)},
			Rests: []frame.Rest{{At: 0}, {At: in["L"]}},
		}
	}
}

func equal(n int, loads frameLoads) func(map[string]float64) frame.Beam {
	return func(in map[string]float64) frame.Beam {
		b := frame.Beam{Length: float64(n) * in["L"], EI: in["EI"], Loads: loads(in)}
		for i := range n + 1 {
			b.Rests = append(b.Rests, frame.Rest{At: float64(i) * in["L"]})
		}
		return b
	}
}

func unequal(ei float64, spans, w []float64) frame.Beam {
	b := frame.Beam{EI: ei, Rests: []frame.Rest{{}}}
	for i, s := range spans {
		b.Loads = append(b.Loads, frame.Uniform(b.Length, b.Length+s, w[i]))
		b.Length += s
		b.Rests = append(b.Rests, frame.Rest{At: b.Length})
	}
	return b
}
