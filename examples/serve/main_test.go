package main

import (
	"bytes"
	"context"
	"encoding/json"
	"errors"
	"io"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"testing/iotest"
	"time"

	"example.org/floewright/frame/plan"
)

func demo(t *testing.T, swap ...string) string {
	t.Helper()
	in, err := plan.Demo("work")
	if err != nil {
		t.Fatal(err)
	}
	text, err := io.ReadAll(in)
	if err != nil {
		t.Fatal(err)
	}
	for i := 0; i < len(swap); i += 2 {
		if !strings.Contains(string(text), swap[i]) {
			t.Fatalf("the plan has no %s", swap[i])
		}
	}
	return strings.NewReplacer(swap...).Replace(string(text))
}

func post(h http.Handler, accept string, body io.Reader) *http.Response {
	r := httptest.NewRequest(http.MethodPost, "/report", body)
	if accept != "" {
		r.Header.Set("Accept", accept)
	}
	w := httptest.NewRecorder()
	h.ServeHTTP(w, r)
	return w.Result()
}

func TestReport(t *testing.T) {
	h := newReporter(time.Minute)
	h.today = func() time.Time { return time.Date(2027, 1, 15, 0, 0, 0, 0, time.UTC) }
	sound := demo(t)
	evil := demo(t, `"Yard work float (invented)"`, `"<script>alert(1)</script> (invented)"`)
	for _, c := range []struct {
		name, accept string
		body         io.Reader
		status       int
		kind         string
		want         []string
	}{
		{"no header", "", strings.NewReader(sound), 200, "application/json", []string{`"status": 3`, `"twelve"`}},
		{"JSON", "application/json", strings.NewReader(sound), 200, "application/json", []string{`"schema": 1`}},
		{"text", "text/plain", strings.NewReader(sound), 200, "text/plain", []string{"AFLOAT, NOBODY ABOARD", "not a permit drawing"}},
		{"a browser", "text/html,application/xhtml+xml;q=0.9,*/*;q=0.8", strings.NewReader(sound), 200, "text/html", []string{"<!DOCTYPE html", "15 January 2027", "not a permit drawing"}},
		{"a name that is markup", "text/html", strings.NewReader(evil), 200, "text/html", []string{"&lt;script&gt;"}},
		{"none that there is", "image/png", strings.NewReader(sound), 406, "text/plain", []string{"text/html"}},
		{"no JSON", "", strings.NewReader(sound[:300]), 400, "application/json", []string{`"line":`, "too early"}},
		{"a list", "text/html", strings.NewReader("[]"), 400, "text/plain", []string{"plan:1:1:", "want an object"}},
		{"nothing", "", strings.NewReader(""), 400, "application/json", []string{`"errors"`}},
		{"a body that breaks off", "", io.MultiReader(strings.NewReader("{"), iotest.ErrReader(io.ErrUnexpectedEOF)), 400, "application/json", []string{`"errors"`}},
		{"too large", "", strings.NewReader(strings.Repeat(" ", 2<<20)), 413, "application/json", []string{"too large"}},
		{"mistakes", "", strings.NewReader(demo(t, `"size": "38 mm x 235 mm", "species": "Spruce`, `"size": "huge", "species": "Spruce`, `"joists_run"`, `"joists_rum"`)), 422, "application/json", []string{`"field":"frame.joists_rum"`, "huge"}},
		{"an empty plan", "text/plain", strings.NewReader("{}"), 422, "text/plain", []string{"frame: not known", "floats: not known"}},
	} {
		r := post(h, c.accept, c.body)
		body, err := io.ReadAll(r.Body)
		if err != nil {
			t.Fatal(err)
		}
		if kind, _, _ := strings.Cut(r.Header.Get("Content-Type"), ";"); r.StatusCode != c.status || kind != c.kind {
			t.Errorf("%s: status %d, %s: %.200s", c.name, r.StatusCode, kind, body)
		}
		if int(r.ContentLength) != len(body) {
			t.Errorf("%s: %d bytes are announced, %d come", c.name, r.ContentLength, len(body))
		}
		for _, want := range c.want {
			if !bytes.Contains(body, []byte(want)) {
				t.Errorf("%s: no %q in %.300s", c.name, want, body)
			}
		}
		if bytes.Contains(body, []byte("<script")) || c.kind == "application/json" && !json.Valid(body) {
			t.Errorf("%s: %.300s", c.name, body)
		}
	}
}

// TestEnds: a client that left, a report that takes too long, and a queue that does
// not move give an error, and nothing of a report.
func TestEnds(t *testing.T) {
	gone, cancel := context.WithCancel(context.Background())
	cancel()
	full := newReporter(20 * time.Millisecond)
	for range cap(full.slots) {
		full.slots <- struct{}{}
	}
	for name, c := range map[string]struct {
		ctx context.Context
		h   http.Handler
	}{
		"gone": {gone, newReporter(time.Minute)}, "late": {context.Background(), newReporter(time.Nanosecond)}, "busy": {context.Background(), full},
	} {
		w := httptest.NewRecorder()
		c.h.ServeHTTP(w, httptest.NewRequestWithContext(c.ctx, http.MethodPost, "/report", strings.NewReader(demo(t))))
		if w.Code != http.StatusServiceUnavailable || w.Header().Get("Retry-After") == "" || strings.Contains(w.Body.String(), "schema") {
			t.Errorf("%s: status %d: %.100s", name, w.Code, w.Body)
		}
	}
	if got := statusOf(errors.New("ours")); got != http.StatusInternalServerError {
		t.Errorf("an error of our own has status %d", got)
	}
}

func TestChoose(t *testing.T) {
	for accept, want := range map[string]string{
		"*/*": "application/json", "text/*": "text/plain", "text/*;q=0.5, text/html": "text/html", "text/html;q=0": "",
		"text/html;q=2, text/plain;q=0.1": "text/plain", "text/html;level": "", "": "", "application/json;q=0.4, text/plain;q=0.6": "text/plain",
		"*/*, application/json;q=0": "text/plain",
	} {
		got := ""
		if f := choose([]string{accept}); f != nil {
			got = f.kind
		}
		if got != want {
			t.Errorf("%q: %q, want %q", accept, got, want)
		}
	}
}

// lines hands out what is written to it.
type lines chan string

func (l lines) Write(p []byte) (int, error) {
	l <- string(p)
	return len(p), nil
}

// TestRun: the program listens, answers, and ends when it is told to.
func TestRun(t *testing.T) {
	ctx, stop := context.WithCancel(context.Background())
	defer stop()
	out, code := make(lines), make(chan int)
	var errs bytes.Buffer
	go func() { code <- run(ctx, []string{"-addr", ":0"}, out, &errs) }()
	_, url, _ := strings.Cut(strings.TrimSpace(<-out), " to ")
	for method, want := range map[string]int{http.MethodPost: http.StatusUnprocessableEntity, http.MethodGet: http.StatusMethodNotAllowed} {
		request, err := http.NewRequest(method, url, strings.NewReader("{}"))
		if err != nil {
			t.Fatal(err)
		}
		r, err := http.DefaultClient.Do(request)
		if err != nil {
			t.Fatal(err)
		}
		r.Body.Close()
		if r.StatusCode != want {
			t.Errorf("%s: status %d, want %d", method, r.StatusCode, want)
		}
	}
	stop()
	if got := <-code; got != 0 {
		t.Errorf("exit status %d: %s", got, errs.String())
	}
	for _, args := range [][]string{{}, {"-addr", "nowhere"}, {"-addr", ":0", "-wait", "0s"}, {"-nosuch"}} {
		var errs bytes.Buffer
		if got := run(ctx, args, io.Discard, &errs); got != 2 || errs.Len() == 0 {
			t.Errorf("%q: exit status %d, %q", args, got, errs.String())
		}
	}
}
