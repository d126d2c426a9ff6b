// Serve answers over HTTP what the library says of a plan. POST a plan's JSON; what
// comes back is the report as JSON or text, or the pages to print, by what the request
// accepts. It opens no port unless it is told which.
//
//	serve -addr :8080
//	curl --data-binary @mydock.json -H "Accept: text/html" http://HOST:8080/report
//
// Status: 200 the report, whatever it finds; 400 no JSON object, 413 too large, 422 a
// plan with mistakes, each named; 406 no form that the request accepts; 503 too busy
// or not done in time.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"net"
	"net/http"
	"os"
	"os/signal"
	"time"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	code := run(ctx, os.Args[1:], os.Stdout, os.Stderr)
	stop()
	os.Exit(code)
}

func run(ctx context.Context, args []string, out, errs io.Writer) int {
	flags := flag.NewFlagSet("serve", flag.ContinueOnError)
	flags.SetOutput(errs)
	addr := flags.String("addr", "", "`host:port` to listen on")
	wait := flags.Duration("wait", 10*time.Second, "longest that a report may take")
	if flags.Parse(args) != nil {
		return 2
	}
	if *addr == "" || *wait <= 0 {
		fmt.Fprintln(errs, "serve: say where to listen, -addr host:port, and how long a report may take")
		return 2
	}
	listener, err := net.Listen("tcp", *addr)
	if err != nil {
		fmt.Fprintln(errs, "serve:", err)
		return 2
	}
	fmt.Fprintf(out, "POST a plan to http://%s/report\n", listener.Addr())
	mux := http.NewServeMux()
	mux.Handle("POST /report", newReporter(*wait))
	server := &http.Server{
		Handler: mux, MaxHeaderBytes: 16 << 10,
		ReadHeaderTimeout: 5 * time.Second, ReadTimeout: 15 * time.Second,
		WriteTimeout: *wait + 30*time.Second, IdleTimeout: time.Minute,
	}
	closed := make(chan error)
	go func() {
		<-ctx.Done()
		last, cancel := context.WithTimeout(context.Background(), *wait) // for what is under way
		defer cancel()
		closed <- server.Shutdown(last)
	}()
	if err = server.Serve(listener); errors.Is(err, http.ErrServerClosed) {
		err = <-closed
	}
	if err != nil {
		fmt.Fprintln(errs, "serve:", err)
		return 1
	}
	return 0
}
