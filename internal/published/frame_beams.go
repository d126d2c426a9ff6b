package published

import "example.org/floewright/frame"

// frameBeams builds the beam of each case of the beam tables from its inputs:
// span L, uniform load w, point load P, and the lengths a, b, c, p of the case.
var frameBeams = map[string]func(in map[string]float64) frame.Beam{
	"SS-UDL":      frameSimple(frameAllOver),
	"SS-P-MID":    frameSimple(frameMiddle),
	"SS-P-ANY":    frameSimple(frameAtA),
	"SS-2P-SYM":   frameSimple(func(in map[string]float64) []frame.Load { return framePair(in, in["a"], in["L"]-in["a"]) }),
	"SS-2P-QTR":   frameSimple(frameQuarters),
	"SS-2P-THIRD": frameSimple(func(in map[string]float64) []frame.Load { return framePair(in, in["L"]/3, 2*in["L"]/3) }),
	"SS-2P-UNSYM": frameSimple(func(in map[string]float64) []frame.Load { return framePair(in, in["a"], in["L"]-in["b"]) }),
	"SS-UDL-PART": frameSimple(func(in map[string]float64) []frame.Load {
		return []frame.Load{frame.Uniform(in["a"], in["a"]+in["b"], in["w"])}
	}),
	"SS-UDL-END": frameSimple(func(in map[string]float64) []frame.Load { return []frame.Load{frame.Uniform(0, in["a"], in["w"])} }),

	"CANT-UDL":   frameCantilever(frameAllOver),
	"CANT-P-END": frameCantilever(func(in map[string]float64) []frame.Load { return []frame.Load{frame.Point(in["L"], in["P"])} }),
	"CANT-P-ANY": frameCantilever(func(in map[string]float64) []frame.Load { return []frame.Load{frame.Point(in["b"], in["P"])} }),

	"FF-UDL":     frameEnds(true, true, frameAllOver),
	"FF-P-MID":   frameEnds(true, true, frameMiddle),
	"FF-P-ANY":   frameEnds(true, true, frameAtA),
	"PROP-UDL":   frameEnds(false, true, frameAllOver),
	"PROP-P-MID": frameEnds(false, true, frameMiddle),
	"PROP-P-ANY": frameEnds(false, true, frameAtA),

	"OH-UDL-ALL":  frameOverhang(func(in map[string]float64) frame.Load { return frame.Uniform(0, in["L"]+in["a"], in["w"]) }),
	"OH-UDL-OH":   frameOverhang(func(in map[string]float64) frame.Load { return frame.Uniform(in["L"], in["L"]+in["a"], in["w"]) }),
	"OH-P-END":    frameOverhang(func(in map[string]float64) frame.Load { return frame.Point(in["L"]+in["a"], in["P"]) }),
	"OH-UDL-SPAN": frameOverhang(func(in map[string]float64) frame.Load { return frame.Uniform(0, in["L"], in["w"]) }),
	"OH-P-SPAN":   frameOverhang(func(in map[string]float64) frame.Load { return frame.Point(in["p"], in["P"]) }),
	"OH2-UDL": func(in map[string]float64) frame.Beam {
		length := in["L"] + 2*in["a"]
		return frame.Beam{
			Length: length, EI: in["EI"],
			Rests: []frame.Rest{{At: in["a"]}, {At: in["a"] + in["L"]}},
			Loads: []frame.Load{frame.Uniform(0, length, in["w"])},
		}
	},

	"C2-UDL":   frameEqual(2, frameSpansLoaded(0, 1)),
	"C2-UDL-1": frameEqual(2, frameSpansLoaded(0)),
	"C2-P-1":   frameEqual(2, frameMiddle),
	"C2-2P":    frameEqual(2, func(in map[string]float64) []frame.Load { return framePair(in, in["L"]/2, 1.5*in["L"]) }),
	"C2-P-ANY": frameEqual(2, frameAtA),
	"C2-UNEQ": func(in map[string]float64) frame.Beam {
		return frameUnequal(in["EI"], []float64{in["a"], in["b"]}, []float64{in["w"], in["w"]})
	},
	"C2-UNEQ-PAT": func(in map[string]float64) frame.Beam {
		return frameUnequal(in["EI"], []float64{in["a"], in["b"]}, []float64{in["wa"], in["wb"]})
	},
	"C3-UDL":      frameEqual(3, frameSpansLoaded(0, 1, 2)),
	"C3-UDL-ENDS": frameEqual(3, frameSpansLoaded(0, 2)),
	"C3-UDL-MID":  frameEqual(3, frameSpansLoaded(1)),
	"C3-UDL-2ADJ": frameEqual(3, frameSpansLoaded(0, 1)),
	"C3-UDL-1END": frameEqual(3, frameSpansLoaded(0)),
	"C3-UNEQ": func(in map[string]float64) frame.Beam {
		return frameUnequal(in["EI"], []float64{in["a"], in["b"], in["c"]}, []float64{in["w"], in["w"], in["w"]})
	},
	"C4-UDL": frameEqual(4, frameSpansLoaded(0, 1, 2, 3)),
	"C5-UDL": frameEqual(5, frameSpansLoaded(0, 1, 2, 3, 4)),

	"SH-SS-UDL":   frameSimple(frameAllOver),
	"SH-SS-MID":   frameSimple(frameMiddle),
	"SH-FF-UDL":   frameEnds(true, true, frameAllOver),
	"SH-FF-MID":   frameEnds(true, true, frameMiddle),
	"SH-QTR-LD":   frameSimple(frameQuarters),
	"SH-CANT-UDL": frameCantilever(frameAllOver),
}

type frameLoads func(in map[string]float64) []frame.Load

func frameAllOver(in map[string]float64) []frame.Load {
	return []frame.Load{frame.Uniform(0, in["L"], in["w"])}
}

func frameMiddle(in map[string]float64) []frame.Load {
	return []frame.Load{frame.Point(in["L"]/2, in["P"])}
}

func frameAtA(in map[string]float64) []frame.Load {
	return []frame.Load{frame.Point(in["a"], in["P"])}
}

func frameQuarters(in map[string]float64) []frame.Load { return framePair(in, in["L"]/4, 3*in["L"]/4) }

func framePair(in map[string]float64, x, y float64) []frame.Load {
	return []frame.Load{frame.Point(x, in["P"]), frame.Point(y, in["P"])}
}

func frameSpansLoaded(which ...int) frameLoads {
	return func(in map[string]float64) []frame.Load {
		var loads []frame.Load
		for _, i := range which {
			loads = append(loads, frame.Uniform(float64(i)*in["L"], float64(i+1)*in["L"], in["w"]))
		}
		return loads
	}
}

func frameSimple(loads frameLoads) func(map[string]float64) frame.Beam {
	return frameEnds(false, false, loads)
}

func frameEnds(left, right bool, loads frameLoads) func(map[string]float64) frame.Beam {
	return func(in map[string]float64) frame.Beam {
		return frame.Beam{
			Length: in["L"], EI: in["EI"], GA: in["GA"], Loads: loads(in),
			Rests: []frame.Rest{{At: 0, Clamped: left}, {At: in["L"], Clamped: right}},
		}
	}
}

func frameCantilever(loads frameLoads) func(map[string]float64) frame.Beam {
	return func(in map[string]float64) frame.Beam {
		return frame.Beam{
			Length: in["L"], EI: in["EI"], GA: in["GA"], Loads: loads(in),
			Rests: []frame.Rest{{At: 0, Clamped: true}},
		}
	}
}

func frameOverhang(load func(map[string]float64) frame.Load) func(map[string]float64) frame.Beam {
	return func(in map[string]float64) frame.Beam {
		return frame.Beam{
			Length: in["L"] + in["a"], EI: in["EI"], Loads: []frame.Load{load(in)},
			Rests: []frame.Rest{{At: 0}, {At: in["L"]}},
		}
	}
}

func frameEqual(n int, loads frameLoads) func(map[string]float64) frame.Beam {
	return func(in map[string]float64) frame.Beam {
		b := frame.Beam{Length: float64(n) * in["L"], EI: in["EI"], Loads: loads(in)}
		for i := range n + 1 {
			b.Rests = append(b.Rests, frame.Rest{At: float64(i) * in["L"]})
		}
		return b
	}
}

func frameUnequal(ei float64, spans, w []float64) frame.Beam {
	b := frame.Beam{EI: ei, Rests: []frame.Rest{{}}}
	for i, s := range spans {
		b.Loads = append(b.Loads, frame.Uniform(b.Length, b.Length+s, w[i]))
		b.Length += s
		b.Rests = append(b.Rests, frame.Rest{At: b.Length})
	}
	return b
}
