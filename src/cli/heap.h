// heap.h - memory for a run of some milliseconds, fetched at one go.
#pragma once

namespace larderloop::cli {

// A book of a family takes some megabytes of small pieces, each page of which would be fetched from
// the kernel by a fault of its own when it is first touched: about a tenth of the time of a weekly
// run. Here the heap is made to go on where a large page begins, two of these are asked for
// (MADV_HUGEPAGE; they come in a sixth of the time of a thousand small ones), and what they cannot
// be had for is fetched together (MADV_POPULATE_WRITE, Linux 5.14). Where the kernel or the C
// library cannot do that nothing happens. Called before a book is loaded; only the first call does
// something.
void fetch_heap_at_once();

}  // namespace larderloop::cli
