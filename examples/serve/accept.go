package main

import (
	"io"
	"mime"
	"slices"
	"strconv"
	"strings"
	"time"

	"example.org/floewright/frame/dock"
)

// A form is one in which a report is sent.
type form struct {
	kind  string
	write func(io.Writer, *dock.Dock, *dock.Report, time.Time) error
}

// forms are in the order in which they are taken where a request likes several alike.
var forms = []form{
	{"application/json", func(w io.Writer, _ *dock.Dock, r *dock.Report, _ time.Time) error { return r.WriteJSON(w) }},
	{"text/plain", func(w io.Writer, _ *dock.Dock, r *dock.Report, _ time.Time) error { return r.WriteText(w) }},
	{"text/html", page},
}

// choose returns the form that an Accept header likes best; nil is none.
func choose(accept []string) *form {
	if len(accept) == 0 {
		return &forms[0]
	}
	var best *form
	most := 0.0
	for i := range forms {
		if q := quality(strings.Join(accept, ","), forms[i].kind); q > most {
			best, most = &forms[i], q
		}
	}
	return best
}

// quality returns how well a type is accepted, 0 to 1: as the range says that names it
// most closely.
func quality(accept, kind string) float64 {
	major, _, _ := strings.Cut(kind, "/")
	ranges := []string{"*/*", major + "/*", kind}
	q, closest := 0.0, -1
	for _, part := range strings.Split(accept, ",") {
		name, params, err := mime.ParseMediaType(part)
		near := slices.Index(ranges, name)
		if err != nil || near <= closest {
			continue
		}
		closest, q = near, 1
		if given, ok := params["q"]; ok {
			if q, err = strconv.ParseFloat(given, 64); err != nil || !(q >= 0 && q <= 1) {
				q = 0
			}
		}
	}
	return q
}
