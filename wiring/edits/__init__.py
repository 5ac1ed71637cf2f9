"""One small file per user act: plan in, plan out; and the history of them."""
