#include "serve/jobs.h"

#include <algorithm>

#include "base/text.h"

namespace serve {

struct Jobs::Job {
  JobView view;
  Work work;
  Turn turn = Turn::kAsked;
  std::atomic<bool> stop{false};
  std::chrono::steady_clock::time_point started;
};

class Jobs::Desk : public JobDesk {
 public:
  Desk(Jobs& jobs, Job& job) : jobs_(jobs), job_(job) {}
  bool stop() const override { return job_.stop; }
  void says(const std::string& what, const std::optional<JobGap>& gap) override {
    JobView view;
    {
      const std::lock_guard lock(jobs_.mutex_);
      job_.view.says = what;
      if (gap) job_.view.gap = gap;
      job_.view.seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() -
                                                        job_.started)
                              .count();
      view = job_.view;
    }
    jobs_.news_(view);
  }

 private:
  Jobs& jobs_;
  Job& job_;
};

std::string_view name_of(JobState state) {
  switch (state) {
    case JobState::kWaiting:
      return "waiting";
    case JobState::kWorking:
      return "working";
    case JobState::kDone:
      return "done";
    case JobState::kStopped:
      return "stopped";
    case JobState::kFailed:
      return "failed";
  }
  return "failed";
}

Jobs::Jobs(std::function<void(const JobView&)> news)
    : news_(std::move(news)), worker_([this] { work(); }) {}

Jobs::~Jobs() {
  {
    const std::lock_guard lock(mutex_);
    closing_ = true;
    waiting_.clear();
    for (const auto& [id, job] : all_) job->stop = true;
  }
  wake_.notify_all();
  worker_.join();
}

std::optional<JobView> Jobs::start(const std::string& owner, const std::string& lesson, Work work,
                                   Turn turn) {
  JobView view;
  {
    const std::lock_guard lock(mutex_);
    if (closing_ || waiting_.size() >= kMostWaiting) return std::nullopt;
    auto job = std::make_shared<Job>();
    job->view.id = base::say("job-", ++last_);
    job->view.owner = owner;
    job->view.lesson = lesson;
    job->view.says = waiting_.empty() && !busy_ ? "Starting." : "Waiting for the plan before it.";
    job->work = std::move(work);
    all_[job->view.id] = job;
    job->turn = turn;
    const auto first_unasked = std::find_if(
        waiting_.begin(), waiting_.end(), [&](const std::shared_ptr<Job>& each) {
          return turn == Turn::kAsked && each->turn == Turn::kUnasked;
        });
    waiting_.insert(first_unasked, job);
    view = job->view;
  }
  wake_.notify_one();
  return view;
}

std::optional<JobView> Jobs::view(const std::string& id) const {
  const std::lock_guard lock(mutex_);
  const auto found = all_.find(id);
  if (found == all_.end()) return std::nullopt;
  return found->second->view;
}

std::optional<JobView> Jobs::stop(const std::string& id) {
  std::optional<JobView> view;
  bool told = false;
  {
    const std::lock_guard lock(mutex_);
    const auto found = all_.find(id);
    if (found == all_.end()) return std::nullopt;
    found->second->stop = true;
    const auto waits = std::find(waiting_.begin(), waiting_.end(), found->second);
    if (waits != waiting_.end()) {
      waiting_.erase(waits);
      found->second->view.state = JobState::kStopped;
      found->second->view.says = "Stopped.";
      found->second->work = nullptr;
      finish(id);
      told = true;
    }
    view = found->second->view;
  }
  if (told) news_(*view);
  return view;
}

void Jobs::finish(const std::string& id) {
  finished_.push_back(id);
  while (finished_.size() > kKept) {
    all_.erase(finished_.front());
    finished_.pop_front();
  }
}

void Jobs::work() {
  for (;;) {
    std::shared_ptr<Job> job;
    {
      std::unique_lock lock(mutex_);
      wake_.wait(lock, [this] { return closing_ || !waiting_.empty(); });
      if (closing_) return;
      job = waiting_.front();
      waiting_.pop_front();
      busy_ = true;
      job->view.state = JobState::kWorking;
      job->view.says = "Starting.";
      job->started = std::chrono::steady_clock::now();
    }
    run(job);
  }
}

void Jobs::run(const std::shared_ptr<Job>& job) {
  Desk desk(*this, *job);
  base::Result<std::string> done = std::string();
  try {
    done = job->work(desk);
  } catch (const std::exception&) {
    // What was thrown is a broken promise of the program; the person needs to know that and no
    // more.
    done = base::Problem{
        "job.fault", "", "", "The program made a mistake while planning.",
        "Try once more; if it happens again, tell whoever looks after the program."};
  }
  JobView view;
  {
    const std::lock_guard lock(mutex_);
    job->work = nullptr;
    job->view.seconds = std::chrono::duration<double>(std::chrono::steady_clock::now() -
                                                      job->started)
                            .count();
    if (done) {
      job->view.result = std::move(done).value();
      job->view.state = job->stop ? JobState::kStopped : JobState::kDone;
      job->view.says = job->stop ? "Stopped; this is the best so far." : "Done.";
    } else {
      job->view.problems = done.problems();
      job->view.state = JobState::kFailed;
      job->view.says = done.problems().front().message;
    }
    busy_ = false;
    finish(job->view.id);
    view = job->view;
  }
  news_(view);
}

}  // namespace serve
