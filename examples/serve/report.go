package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"io"
	"net/http"
	"runtime"
	"strconv"
	"strings"
	"time"

	"example.org/floewright/frame/dock"
	"example.org/floewright/frame/plan"
	"example.org/floewright/frame/sheet"
)

// A reporter answers a plan with its report. One report at a time keeps all cores busy
// by itself, so that few run at once and the others wait.
type reporter struct {
	wait  time.Duration // for one report, the time in the queue counted in
	most  int64         // bytes of a plan
	slots chan struct{}
	today func() time.Time
}

func newReporter(wait time.Duration) *reporter {
	return &reporter{wait: wait, most: 1 << 20, slots: make(chan struct{}, runtime.GOMAXPROCS(0)), today: time.Now}
}

// ServeHTTP makes the whole answer before it sends a byte of it.
func (s *reporter) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	w.Header().Set("Vary", "Accept")
	f := choose(r.Header.Values("Accept"))
	if f == nil {
		refuse(w, f, http.StatusNotAcceptable, errors.New("there is application/json, text/plain and text/html"))
		return
	}
	d, err := dock.Read("plan", http.MaxBytesReader(w, r.Body, s.most))
	if err != nil {
		refuse(w, f, statusOf(err), err)
		return
	}
	ctx, cancel := context.WithTimeout(r.Context(), s.wait)
	defer cancel()
	var answer bytes.Buffer
	if err := s.report(ctx, &answer, d, f); err != nil {
		refuse(w, f, statusOf(err), err)
		return
	}
	send(w, f.kind, http.StatusOK, answer.Bytes())
}

// report waits for its turn and writes the report in a form.
func (s *reporter) report(ctx context.Context, out io.Writer, d *dock.Dock, f *form) error {
	select {
	case s.slots <- struct{}{}:
		defer func() { <-s.slots }()
	case <-ctx.Done():
		return ctx.Err()
	}
	r, err := d.Report(ctx, d.Units())
	if err != nil {
		return err
	}
	return f.write(out, d, r, s.today())
}

// page writes the pages to print.
func page(out io.Writer, d *dock.Dock, r *dock.Report, date time.Time) error {
	pages, err := sheet.Of(d, r, date)
	if err != nil {
		return err
	}
	text, err := pages.HTML()
	if err == nil {
		_, err = io.WriteString(out, text)
	}
	return err
}

// statusOf tells whose fault an error is: the file's, the plan's, the hour's, or ours.
func statusOf(err error) int {
	var large *http.MaxBytesError
	var mistakes plan.Errors
	switch {
	case errors.Is(err, context.DeadlineExceeded), errors.Is(err, context.Canceled):
		return http.StatusServiceUnavailable
	case errors.As(err, &large):
		return http.StatusRequestEntityTooLarge
	case !errors.As(err, &mistakes):
		return http.StatusInternalServerError
	case errors.Is(err, plan.ErrJSON), mistakes[0].Path == "": // no plan, or a body that broke off
		return http.StatusBadRequest
	}
	return http.StatusUnprocessableEntity
}

// A mistake is one error of a plan as a client gets it; a line of 0 is none.
type mistake struct {
	Line    int    `json:"line"`
	Column  int    `json:"column"`
	Field   string `json:"field"`
	Message string `json:"message"`
}

// refuse sends the errors, as JSON to those who asked for it and as lines to others.
func refuse(w http.ResponseWriter, f *form, status int, err error) {
	if status == http.StatusServiceUnavailable {
		w.Header().Set("Retry-After", "5")
	}
	if f == nil || f.kind != "application/json" {
		send(w, "text/plain", status, []byte(err.Error()+"\n"))
		return
	}
	list := []mistake{}
	var found plan.Errors
	if errors.As(err, &found) {
		for _, e := range found {
			list = append(list, mistake{e.At.Line, e.At.Column, e.Path, e.Err.Error()})
		}
	} else {
		list = append(list, mistake{Message: err.Error()})
	}
	text, _ := json.Marshal(map[string][]mistake{"errors": list}) // texts and numbers always can
	send(w, f.kind, status, append(text, '\n'))
}

func send(w http.ResponseWriter, kind string, status int, body []byte) {
	h := w.Header()
	h.Set("Content-Type", kind+"; charset=utf-8")
	h.Set("Content-Length", strconv.Itoa(len(body)))
	h.Set("Cache-Control", "no-store")
	h.Set("X-Content-Type-Options", "nosniff")
	if strings.HasSuffix(kind, "html") {
		h.Set("Content-Security-Policy", "default-src 'none'; style-src 'unsafe-inline'")
	}
	w.WriteHeader(status)
	_, _ = w.Write(body) // nobody is left to tell
}
