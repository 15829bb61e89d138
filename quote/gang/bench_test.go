package gang

import (
	"math/rand"
	"strconv"
	"testing"
)

// shopRoll is a roll with lengths like a printer's, in hundredths of an inch.
func shopRoll() RollCard {
	return RollCard{W: 2200, Gap: 25, Lengths: []RollLength{
		{1200, 700}, {2400, 1300}, {3600, 1900}, {6000, 2900}, {12000, 5400}, {18000, 7800}, {24000, 10000},
	}}
}

// planner is what a sheet card and a roll have in common.
type planner interface {
	Cost(items, need []int) (Price, bool)
	Plan(items, need []int) (Plan, error)
}

// job is a set of designs with how many are needed.
type job struct {
	designs     []Item
	items, need []int
}

// shopJobs are jobs of three designs and about 50 pieces of each, the goal's size.
func shopJobs() []job {
	r := rand.New(rand.NewSource(3))
	jobs := make([]job, 20)
	for k := range jobs {
		jobs[k].designs = shopItems(r, 3)
		jobs[k].items, jobs[k].need = shopNeed(r, 3, 45, 10)
	}
	return jobs
}

func benchmarkPlan(b *testing.B, planner func(items []Item) planner) {
	jobs := shopJobs()
	var cost, bound float64
	for n := range b.N {
		for _, j := range jobs {
			p, err := planner(j.designs).Plan(j.items, j.need)
			if err != nil {
				b.Fatal(err)
			}
			if n == 0 {
				cost, bound = cost+float64(p.Cost), bound+float64(p.Bound)
			}
		}
	}
	b.ReportMetric(float64(b.Elapsed().Microseconds())/1000/float64(b.N*len(jobs)), "ms/plan")
	b.ReportMetric(100*(cost/bound-1), "%gap")
}

func BenchmarkSheets_planCold(b *testing.B) {
	benchmarkPlan(b, func(items []Item) planner { return NewSheets(shopCard(), items) })
}

func BenchmarkRoll_planCold(b *testing.B) {
	benchmarkPlan(b, func(items []Item) planner { return NewRoll(shopRoll(), items) })
}

// benchmarkLadder prices steps quantities up to six times the job's.
func benchmarkLadder(b *testing.B, steps int, planner func(items []Item) planner) {
	jobs := shopJobs()
	for range b.N {
		for _, j := range jobs {
			p := planner(j.designs)
			need := make([]int, len(j.need))
			for q := range steps {
				for k, n := range j.need {
					need[k] = max(1, n*6*(q+1)/steps)
				}
				if _, ok := p.Cost(j.items, need); !ok {
					b.Fatalf("%v × %+v is not served", need, j.designs)
				}
			}
		}
	}
	ms := float64(b.Elapsed().Microseconds()) / 1000 / float64(b.N*len(jobs))
	b.ReportMetric(ms, "ms/ladder")
	b.ReportMetric(ms/float64(steps), "ms/step")
}

func BenchmarkSheets_ladder(b *testing.B) {
	for _, steps := range []int{4, 8, 16, 32} {
		b.Run(strconv.Itoa(steps), func(b *testing.B) {
			benchmarkLadder(b, steps, func(items []Item) planner { return NewSheets(shopCard(), items) })
		})
	}
}

func BenchmarkRoll_ladder(b *testing.B) {
	for _, steps := range []int{4, 8, 16, 32} {
		b.Run(strconv.Itoa(steps), func(b *testing.B) {
			benchmarkLadder(b, steps, func(items []Item) planner { return NewRoll(shopRoll(), items) })
		})
	}
}
