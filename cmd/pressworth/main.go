// Command pressworth prices heat-press jobs: in a window, or from the shell for batch work.
//
//	pressworth                  opens the window
//	pressworth price JOB.json   prints what a job costs and what the customer pays
//	pressworth help             lists the commands
//
// Results go to standard output as JSON, messages to standard error. The exit code is 0 for done, 2 for input that is
// not right, 1 for anything else.
//
// Not in this package: any rule of pricing (quote), SQL (catalog/store), drawing (ui, export).
package main

import "os"

func main() {
	os.Exit(run(os.Args[1:], shell{in: os.Stdin, out: os.Stdout, err: os.Stderr}))
}

// commands are what the program does without a window, in the order in which help lists them.
func commands() []command {
	return []command{
		{"help", "", "this list", help},
		{"version", "", "version of the program, of its toolkit and of its files", printVersion},
		{"price", "JOB.json", "the result of a job file", price},
		{"cheapest", "JOB.json --placement ID [--upto 150]", "which card is cheapest from which quantity on", cheapest},
		{"pack", "PACK.json", "rectangles laid on sheets or on a strip", pack},
		{"documents", "JOB.json --out DIR [--date YYYY-MM-DD]", "every document of a job", documents},
		{
			"blanks", "import FILE --supplier NAME --shop FILE.db [--columns MAP.json] [--dry-run] | find WORDS --shop FILE.db [--limit N]",
			"import a price file, or search the blanks", blankCommands,
		},
		{"backup", "--shop FILE.db --to DIR", "a verified copy of a shop file", backup},
		{"restore", "FILE --shop FILE.db", "put a backup in the place of a shop file, which is kept", restore},
		{"check", "--shop FILE.db", "a full check of a shop file", check},
	}
}
