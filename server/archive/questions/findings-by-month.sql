-- Which findings come how often, by the month that a job was opened.
-- Year and month are 0 for records that say no day. A finding that a signed concession accepts is counted apart.
SELECT
  COALESCE(EXTRACT(YEAR FROM jobs.opened), 0) AS opened_year,
  COALESCE(EXTRACT(MONTH FROM jobs.opened), 0) AS opened_month,
  findings.code AS code,
  COUNT(*) AS found,
  SUM(CASE WHEN findings.accepted THEN 1 ELSE 0 END) AS accepted,
  COUNT(DISTINCT findings.record) AS records
FROM findings
JOIN jobs ON jobs.record = findings.record
GROUP BY
  COALESCE(EXTRACT(YEAR FROM jobs.opened), 0),
  COALESCE(EXTRACT(MONTH FROM jobs.opened), 0),
  findings.code
ORDER BY opened_year, opened_month, code
