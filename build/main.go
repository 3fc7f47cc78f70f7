// Command build makes, serves and checks the handbook, and runs its worksheets.
//
//	go run ./build                      build the site into public/
//	go run ./build serve                build, serve on loopback, rebuild when a file changes
//	go run ./build check                check content, links, citations, cautions
//	go run ./build compute              list the worksheets; compute NAME lists its inputs
//	go run ./build compute NAME key=value … run one; -json for machines
//
// This file holds flags and exit codes only: 0 is success, 1 a problem in the
// content or the build, 2 bad input on the command line.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"os"
	"os/signal"
	"path/filepath"
	"strconv"
	"strings"
	"syscall"

	"changeout/build/internal/calcview"
	"changeout/build/internal/check"
	"changeout/build/internal/compute"
	"changeout/build/internal/module"
	"changeout/build/internal/publish"
	"changeout/build/internal/report"
	"changeout/build/internal/serve"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	os.Exit(run(ctx, os.Args[1:]))
}

// options are the flags that build, serve and check share.
type options struct {
	publish.Options
	port   int
	module string // write the module alone into this file
	given  string // the date as given, for the program that takes over
}

func run(ctx context.Context, args []string) int {
	command := "build"
	if len(args) > 0 && !strings.HasPrefix(args[0], "-") {
		command, args = args[0], args[1:]
	}
	switch command {
	case "compute":
		return runCompute(args)
	case "build", "serve", "check":
	default:
		return bad(fmt.Sprintf("there is no command %q; there are serve, check and compute, and none builds the site", command))
	}
	o, code := parse(command, args)
	if code >= 0 {
		return code
	}
	if err := o.prepare(ctx); err != nil {
		return bad(err.Error())
	}
	switch command {
	case "serve":
		return runServe(ctx, o)
	case "check":
		return runCheck(ctx, o)
	}
	return runBuild(ctx, o)
}

// bad says what is wrong with the command line.
func bad(sentence string) int {
	fmt.Fprintln(os.Stderr, sentence)
	return 2
}

func runCompute(args []string) int {
	if err := compute.Run(args, os.Stdout); err != nil {
		return bad(err.Error())
	}
	return 0
}

func parse(command string, args []string) (*options, int) {
	o := &options{}
	fs := flag.NewFlagSet(command, flag.ContinueOnError)
	fs.StringVar(&o.Root, "root", "", "the repository, with go.mod and site/ (default: found upwards from here)")
	fs.StringVar(&o.Content, "content", "", "folder of the handbook's pages (default content)")
	fs.StringVar(&o.Company, "company", "", "folder of a company's own pages, laid over the handbook")
	fs.StringVar(&o.Out, "out", "", "output folder (default public)")
	fs.StringVar(&o.Base, "base", "", "path the site is served under, such as /handbook/")
	single := "also write the whole handbook into this one HTML file"
	if command == "build" {
		single += " (default handbook.html in the output folder, where the site offers it; none: no such file)"
	}
	fs.StringVar(&o.Single, "single", "", single)
	fs.StringVar(&o.Date, "date", "", "date shown on the pages (default: SOURCE_DATE_EPOCH, else the last commit, else the newest page)")
	if command == "build" {
		fs.StringVar(&o.module, "module", "", "write only the WebAssembly module, into this file")
	}
	if command == "serve" {
		fs.IntVar(&o.port, "port", 0, "port (default 8420 or the next free one)")
	}
	if err := fs.Parse(args); err != nil {
		if errors.Is(err, flag.ErrHelp) {
			return nil, 0
		}
		return nil, 2
	}
	if fs.NArg() > 0 {
		return nil, bad(fmt.Sprintf("%q is not understood after %s; flags start with a dash", fs.Arg(0), command))
	}
	return o, -1
}

// prepare finds the repository and gathers what the computation supplies.
func (o *options) prepare(ctx context.Context) error {
	if o.Root == "" {
		root, err := findRoot()
		if err != nil {
			return err
		}
		o.Root = root
	}
	o.Progress = os.Stderr
	if o.module != "" {
		return nil // no page is made
	}
	o.given = o.Date
	date, err := publish.BuildDate(ctx, o.Root, o.Date)
	if err != nil {
		return err
	}
	o.Date = date
	supply, err := calcview.NewSupply(os.DirFS(filepath.Join(o.Root, "site")), os.DirFS(filepath.Join(o.Root, "testdata", "published")))
	if err != nil {
		return err
	}
	o.Supply = supply
	return nil
}

// findRoot looks upwards for the folder that holds go.mod and site.
func findRoot() (string, error) {
	dir, err := os.Getwd()
	if err != nil {
		return "", err
	}
	for d := dir; ; d = filepath.Dir(d) {
		if _, err := os.Stat(filepath.Join(d, "go.mod")); err == nil {
			if _, err := os.Stat(filepath.Join(d, "site", "app.ts")); err == nil {
				return d, nil
			}
		}
		if d == filepath.Dir(d) {
			return "", fmt.Errorf("the handbook's repository was not found from %s upwards; run inside it or give -root", dir)
		}
	}
}

func runBuild(ctx context.Context, o *options) int {
	if o.module != "" {
		return runModule(ctx, o)
	}
	o.placeSingle()
	p := publish.New(o.Options)
	summary, problems := p.Build(ctx)
	if len(problems) > 0 {
		return fail(problems)
	}
	describe(summary, o)
	if !p.OffersSingle() {
		fmt.Fprintln(os.Stderr, "the site does not offer the single file: over plain http a phone can keep nothing")
	}
	return 0
}

// runModule writes the file that phones load, for tests that run it.
func runModule(ctx context.Context, o *options) int {
	m, problems := module.Build(ctx, module.Options{Root: o.Root, Progress: o.Progress})
	if len(problems) > 0 {
		return fail(problems)
	}
	if err := os.WriteFile(o.module, m.Bytes, 0o644); err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	return 0
}

func describe(s publish.Summary, o *options) {
	fmt.Fprintf(os.Stderr, "%d pages, %d files, %.1f MB in %s (version %s)\n", s.Pages, s.Files, float64(s.Bytes)/1e6, o.outName(), s.Version)
	if s.Single > 0 {
		fmt.Fprintf(os.Stderr, "single file %s, %.1f MB\n", o.Single, float64(s.Single)/1e6)
	}
}

// placeSingle puts the single file into the site when nothing else was said.
// Over plain http a phone can keep nothing but this file, and whoever hosts the
// site seldom knows that. The preview server does not make it: it takes longer
// than all else that an edit changes.
func (o *options) placeSingle() {
	switch o.Single {
	case "":
		o.Single = filepath.Join(o.outFolder(), "handbook.html")
	case "none":
		o.Single = ""
	}
}

// outFolder is where the site goes.
func (o *options) outFolder() string {
	if o.Out != "" {
		return o.Out
	}
	return filepath.Join(o.Root, "public")
}

func (o *options) outName() string {
	if o.Out != "" {
		return o.Out
	}
	return "public"
}

// fail prints all problems, sorted, and returns the exit code.
func fail(problems []report.Problem) int {
	var list report.List
	list.Add(problems...)
	list.Print(os.Stderr)
	return 1
}

func runCheck(ctx context.Context, o *options) int {
	o.Progress = nil
	files, problems := publish.New(o.Options).Files(ctx)
	if len(problems) == 0 {
		problems = check.Output(files)
		problems = append(problems, publish.CheckSearch(files, o.Options)...)
	}
	if len(problems) > 0 {
		return fail(problems)
	}
	fmt.Fprintf(os.Stderr, "no problems in %d files\n", len(files))
	return 0
}

func runServe(ctx context.Context, o *options) int {
	o.Version = "preview"
	p := publish.New(o.Options)
	summary, problems := p.Build(ctx)
	if len(problems) > 0 {
		return fail(problems)
	}
	describe(summary, o)
	err := serve.Run(ctx, serve.Options{
		Out: o.outFolder(), Base: o.Base, Port: o.port, Watch: p.WatchFolders(), Log: os.Stderr,
		Rebuild: func(ctx context.Context) []report.Problem {
			_, problems := p.Build(ctx)
			return problems
		},
		Restart: func(ctx context.Context, port int) ([]report.Problem, error) {
			return serve.Restart(ctx, o.Root, "./build", restartArgs(o, port))
		},
	})
	if err != nil && ctx.Err() == nil {
		return bad(err.Error())
	}
	return 0
}

// restartArgs repeats this command line for the program that takes over, on
// the port that is in use, so that an open page finds the server again.
func restartArgs(o *options, port int) []string {
	args := []string{"serve", "-root", o.Root, "-port", strconv.Itoa(port)}
	for _, f := range []struct{ name, value string }{{"-content", o.Content}, {"-company", o.Company}, {"-out", o.Out}, {"-base", o.Base}, {"-single", o.Single}, {"-date", o.given}} {
		if f.value != "" {
			args = append(args, f.name, f.value)
		}
	}
	return args
}
